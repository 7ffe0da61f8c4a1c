/** Evaluation in the browser: the host for the page, and the frame's page for the server. */
export { evaluatorFrame, type FramePage } from './frame.js'
export { type BrowserHostOptions, createBrowserHost, createBrowserNumbersHost } from './host.js'
