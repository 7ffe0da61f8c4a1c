/** What the page of words and keys adds to the style of plain pages: lists of words and units, tables of keys. */
export const wordsStyle = `
.words section { scroll-margin-top: 1rem; } .words :is(p, ul, .terms, .troubles) { max-width: 44rem; } .words li { margin: .35rem 0; }
.words code, .words kbd { font: .9em "JetBrains Mono", ui-monospace, monospace; }
.words .contents { display: flex; flex-wrap: wrap; gap: .25rem 1.25rem; padding: 0; margin: 0; max-width: none; list-style: none; } .contents li { margin: 0; }
.terms, .troubles { display: grid; grid-template-columns: minmax(8rem, 12rem) 1fr; gap: .4rem 1.25rem; margin: .5rem 0; }
.words dt { font-weight: 600; } .words dd { margin: 0; }
.units { columns: 13rem; column-gap: 1.5rem; margin: .75rem 0; } .units div { break-inside: avoid; margin-bottom: .75rem; } .units dd { padding-left: 4.75rem; text-indent: -4.75rem; } .units code { display: inline-block; min-width: 4.75rem; text-indent: 0; }
.key-tables { display: grid; grid-template-columns: repeat(auto-fill, minmax(min(21rem, 100%), 1fr)); gap: 1.25rem 2rem; align-items: start; }
.keys { border-collapse: collapse; width: 100%; } .keys caption { text-align: left; font-weight: 600; padding-bottom: .25rem; }
.keys :is(th, td) { text-align: left; vertical-align: top; border-top: 1px solid var(--rule); padding: .25rem .75rem .25rem 0; } .keys th { font-weight: 400; color: var(--faint); font-size: .9rem; }
.keys td:first-child { width: 9rem; } .keys .combination { white-space: nowrap; } .words kbd { border: 1px solid var(--rule); padding: 0 .3em; }
@media (max-width: 34rem) { .terms, .troubles { grid-template-columns: 1fr; gap: 0; } .words :is(.terms, .troubles) dd { margin-bottom: .5rem; } }
@media print { .keys { break-inside: avoid; } .words :is(.terms, .troubles) dd { break-inside: avoid; } .words { font-size: 9.5pt; } }
`
