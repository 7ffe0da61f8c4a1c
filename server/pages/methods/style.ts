/** What the page of methods adds to the style of plain pages. */
export const methodsStyle = `
.methods section { scroll-margin-top: 1rem; } .methods .contents { display: flex; flex-wrap: wrap; gap: .25rem 1.25rem; padding: 0; margin: 1rem 0 0; list-style: none; } .methods [hidden] { display: none !important; }
.method-search { display: flex; flex-wrap: wrap; gap: .35rem .75rem; align-items: center; } .method-search label { flex-basis: 100%; font-weight: 600; }
.method-search input { flex: 1 1 16rem; max-width: 30rem; font: inherit; color: inherit; background: transparent; border: 1px solid var(--faint, currentColor); padding: .4rem .5rem; }
.method-search button { font: inherit; color: var(--paper); background: var(--accent); border: 1px solid var(--accent); padding: .35rem 1rem; cursor: pointer; } .method-count { flex-basis: 100%; margin: 0; font-size: .9rem; }
.methods .method { border-bottom: 1px solid var(--rule); scroll-margin-top: .5rem; } .methods .method > summary { cursor: pointer; padding: .4rem 0; display: grid; grid-template-columns: minmax(9rem, 15rem) 1fr; gap: .25rem 1rem; align-items: baseline; }
.methods .method h3 { margin: 0; font: 600 .95rem/1.4 "JetBrains Mono", ui-monospace, monospace; overflow-wrap: anywhere; color: var(--accent); text-decoration: underline; text-underline-offset: .2em; } .method-gist { font-size: .95rem; } .method[open] .method-gist { display: none; } .method-body { padding: 0 0 1.25rem; scroll-margin-top: 4rem; }
.method-try { margin-top: .5rem; } .methods pre { overflow-x: auto; font: .85rem/1.5 "JetBrains Mono", ui-monospace, monospace; } .methods .method[open] > summary { border-bottom: 1px dotted var(--rule); margin-bottom: .5rem; }
@media (max-width: 34rem) { .methods .method > summary { grid-template-columns: 1fr; } }
@media print { .method-search, .method-try { display: none; } .methods .method:not([open]) .method-body { display: none; } }
`
