/** The text of the worker: the sandbox, and around it the few lines that pull its lines and post them. */

/**
 * Everything that the few lines need later (the compiler, the timer, the port) is taken before the sandbox locks the realm down and
 * removes it from the global. The sandbox is an expression whose value is `step`, so it needs no name of its own.
 */
export function workerText(sandboxText: string): string {
  return `"use strict";
(() => {
  const compile = eval;
  const later = setTimeout;
  self.onmessage = (event) => {
    self.onmessage = null;
    const port = event.ports[0];
    const step = ${sandboxText.trim().replace(/;$/, '')};
    const compiled = (code) => { try { return compile(code); } catch { return undefined; } };
    port.onmessage = (event) => {
      let line = step(event.data);
      while (line !== "end" && line !== "fault") {
        if (line.startsWith("compile ")) { line = step(undefined, compiled(line.slice(8))); continue; }
        port.postMessage(line);
        if (line === "loaded") return;
        line = step(undefined);
      }
      // What a cell left behind for later runs before the end is told, so it counts against its own run.
      later(() => port.postMessage(line), 0);
    };
    port.postMessage("ready");
  };
})();
`
}
