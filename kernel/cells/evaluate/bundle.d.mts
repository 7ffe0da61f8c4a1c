/** Types of `bundle.mjs`. */
export function bundleSandboxText(options?: { readonly kernel?: string }): Promise<{ text: string; hash: string }>
export function bundleSandbox(outFile: string): Promise<{ hash: string }>
