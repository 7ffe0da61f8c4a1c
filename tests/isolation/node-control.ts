/** The control: the text of an attack in an ordinary Node process, with nothing in its way. */
import { spawn } from 'node:child_process'
import { upstreamBody } from './attacks.js'

/** Resolves to what the attack says of itself; false when it throws. Waits until what it set off has `come`, at most so long. */
export function runInPlainNode(text: string, milliseconds: number, come: () => boolean): Promise<boolean> {
  const program = `
    globalThis.u = { kg: 1 }; globalThis.rotor = { hover() {} }; globalThis.assumption = function () {};
    globalThis.require = undefined;
    process.on('uncaughtException', () => {}); process.on('unhandledRejection', () => {});
    ${upstreamBody}
    const attack = (reads) => { ${text} return won };
    let won = false;
    setTimeout(() => process.exit(), ${milliseconds});
    try { won = attack({ upstream }) } catch {}
    process.exitCode = won === true ? 42 : 0;`
  return new Promise((resolve) => {
    const child = spawn(process.execPath, ['--no-warnings', '--input-type=module', '--eval', program], {
      stdio: 'ignore',
    })
    const watch = setInterval(() => come() && child.kill(), 20)
    child.on('close', (code) => {
      clearInterval(watch)
      resolve(code === 42)
    })
  })
}
