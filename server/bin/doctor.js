/** `npm run doctor`: what this machine has and what is missing, one line each; exit code 1 when something needed is missing. */
import { accessSync, constants, existsSync } from 'node:fs'
import { createServer } from 'node:net'
import { dirname, join } from 'node:path'
import { findBrowser, installLine } from './browser.js'
import { isBuilt } from './freshness.js'
import { isInstalled, nodeProblem, root } from './preparation.js'

const port = Number(process.env.HOVERFOLIO_PORT ?? 4180)
const dataFolder = process.env.HOVERFOLIO_DATA ?? join(root, 'data')

const findings = [
  needed('Node', nodeProblem() ?? true, `version ${process.versions.node}`),
  optional('packages', isInstalled() || 'not installed as the lock file says; "npm start" installs them', 'installed'),
  optional(
    'build',
    isInstalled() && isBuilt() ? true : 'missing or older than the sources; "npm start" builds it',
    'up to date',
  ),
  optional(
    'browser for tests',
    (await findBrowser()) !== undefined || `none found. ${installLine}`,
    `${await findBrowser()}`,
  ),
  needed('port', await portProblem(port), `${port} is free`),
  needed('data folder', folderProblem(dataFolder), `${dataFolder} can be written`),
]
for (const finding of findings) process.stdout.write(`${finding.mark.padEnd(8)} ${finding.subject}: ${finding.text}\n`)
process.exitCode = findings.some((finding) => finding.mark === 'missing') ? 1 : 0

function needed(subject, answer, good) {
  return { subject, mark: answer === true ? 'good' : 'missing', text: answer === true ? good : answer }
}

function optional(subject, answer, good) {
  return { subject, mark: answer === true ? 'good' : 'later', text: answer === true ? good : answer }
}

function portProblem(number) {
  return new Promise((resolve) => {
    const server = createServer()
    server.once('error', (error) =>
      resolve(`${number} cannot be used (${error.message}); choose another with "npm start -- --port NUMBER"`),
    )
    server.listen(number, '127.0.0.1', () => server.close(() => resolve(true)))
  })
}

function folderProblem(folder) {
  let nearest = folder
  while (!existsSync(nearest)) nearest = dirname(nearest)
  try {
    accessSync(nearest, constants.W_OK)
    return true
  } catch {
    return `${folder} cannot be written; choose another with "npm start -- --data FOLDER"`
  }
}
