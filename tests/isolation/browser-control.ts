/** The control: the text of an attack in an ordinary worker of an ordinary page, with nothing in its way. */
import type { Page } from 'playwright'
import { upstreamBody } from './attacks.js'

/** Resolves to what the attack says of itself; false when it throws. Waits a moment for what it set off. */
export async function runInPlainWorker(page: Page, text: string, milliseconds: number): Promise<boolean> {
  const program = `
    self.u = { kg: 1 }; self.rotor = { hover() {} }; self.assumption = function () {};
    ${upstreamBody}
    const tell = self.postMessage.bind(self);
    const attack = (reads) => { ${text} return won };
    let verdict = false;
    try { verdict = attack({ upstream }) } catch {}
    tell({ verdict: verdict === true });`
  return page.evaluate(
    ([script, wait]) =>
      new Promise<boolean>((resolve) => {
        const worker = new Worker(URL.createObjectURL(new Blob([script])))
        const stop = (verdict: boolean) => {
          setTimeout(() => {
            worker.terminate()
            resolve(verdict)
          }, wait)
        }
        worker.onmessage = ({ data }) => {
          if (typeof data?.verdict === 'boolean') stop(data.verdict)
        }
        worker.onerror = () => stop(false)
      }),
    [program, milliseconds] as const,
  )
}
