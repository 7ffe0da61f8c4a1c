/**
 * What must be true before anything runs: Node new enough and packages installed as the lock file says. Plain JavaScript with
 * Node's own modules only, because it runs before anything is installed.
 */
import { spawnSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'

export const root = fileURLToPath(new URL('../..', import.meta.url))
export const buildFolder = join(root, '.build')

const oldestNode = [20, 19]

/** Stops with one sentence and the exit code 1. */
export function stop(sentence) {
  process.stderr.write(`${sentence}\n`)
  process.exit(1)
}

/** The running Node is new enough, or a sentence that says which one is needed. */
export function nodeProblem() {
  const [major, minor] = process.versions.node.split('.').map(Number)
  const enough = major > oldestNode[0] || (major === oldestNode[0] && minor >= oldestNode[1])
  return enough
    ? undefined
    : `Node ${process.versions.node} is too old: Hoverfolio needs Node ${oldestNode.join('.')} or newer.`
}

/** Runs a command of this project in its root; its output is shown only if it fails or `show` is set. */
export function run(command, args, { show = false, env = process.env } = {}) {
  const result = spawnSync(command, args, {
    cwd: root,
    env,
    encoding: 'utf8',
    stdio: show ? 'inherit' : 'pipe',
    shell: process.platform === 'win32',
  })
  if (result.error !== undefined) stop(`${command} could not be started: ${result.error.message}`)
  if (result.status === 0) return
  if (!show) process.stderr.write(`${result.stdout}${result.stderr}`)
  stop(`"${command} ${args.join(' ')}" failed with exit code ${result.status}.`)
}

/** Runs the JavaScript of an installed package's command by this same Node, whatever the platform's shell is. */
export function runTool(script, args, options) {
  run(process.execPath, [join(root, 'node_modules', script), ...args], options)
}

/** Installs packages when node_modules does not match the lock file. */
export function ensureInstalled(say) {
  const problem = nodeProblem()
  if (problem !== undefined) stop(problem)
  if (isInstalled()) return
  say('Installing packages (once, about a minute) ...')
  run('npm', ['ci', '--include=dev', '--no-audit', '--no-fund', '--loglevel=error'])
  writeFileSync(installMark(), lockHash())
}

/** True when node_modules was installed from the present lock file. */
export function isInstalled() {
  return existsSync(installMark()) && readFileSync(installMark(), 'utf8') === lockHash()
}

function installMark() {
  return join(root, 'node_modules', '.installed.sha256')
}

/** Hash over the lock file. */
export function lockHash() {
  return createHash('sha256')
    .update(readFileSync(join(root, 'package-lock.json')))
    .digest('hex')
}
