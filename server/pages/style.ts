/** Style of the pages the server draws by itself: list, words and keys, cautions, refusals. Ruled paper, one accent, light and dark. */
import { methodsStyle } from './methods/style.js'
import { wordsStyle } from './words/style.js'

export const plainStyle = `
:root { color-scheme: light dark; --paper: #fbfaf6; --ink: #1d2430; --faint: #5d6675; --rule: #c9cdd3; --accent: #0b5c7a; --warning: #8a3b12; }
@media screen and (prefers-color-scheme: dark) { :root { --paper: #14181e; --ink: #e6e8eb; --faint: #a2abb8; --rule: #3a424d; --accent: #7cc4de; --warning: #f0a878; } }
body { margin: 0; background: var(--paper); color: var(--ink); font: 1rem/1.5 Barlow, "Helvetica Neue", Arial, sans-serif; }
.plain { max-width: 52rem; margin: 0 auto; padding: 1.5rem 1.25rem 4rem; }
.plain header { border-bottom: 2px solid var(--ink); margin-bottom: 1.25rem; padding-bottom: .5rem; }
.plain h1 { font: 600 1.75rem/1.2 "Barlow Semi Condensed", Barlow, Arial, sans-serif; margin: 0 0 .5rem; }
.plain h2 { font: 600 1.15rem/1.3 "Barlow Semi Condensed", Barlow, Arial, sans-serif; margin: 2rem 0 .25rem; }
.plain .mark { margin: 0; letter-spacing: .08em; text-transform: uppercase; font-size: .8rem; color: var(--faint); }
.plain a { color: var(--accent); text-underline-offset: .15em; }
.plain :is(a, button, input, summary):focus-visible { outline: 2px solid var(--accent); outline-offset: 2px; }
.plain-caution { margin: 0; font-size: .9rem; color: var(--warning); }
.plain .go { color: var(--paper); }
.plain .teach, .plain .refusal { font-family: "Source Serif 4", Georgia, serif; font-size: 1.1rem; max-width: 40rem; }
.notebooks { list-style: none; margin: 0; padding: 0; }
.notebooks li { border-bottom: 1px solid var(--rule); padding: .9rem 0; }
.notebooks .title { font: 600 1.2rem/1.3 "Barlow Semi Condensed", Barlow, Arial, sans-serif; }
.notebooks .question { margin: .2rem 0; font-family: "Source Serif 4", Georgia, serif; max-width: 42rem; }
.notebooks .facts { margin: .2rem 0; display: flex; gap: 1.25rem; font-size: .9rem; color: var(--faint); font-variant-numeric: tabular-nums; }
.notebooks .actions { display: flex; flex-wrap: wrap; gap: .25rem 1rem; align-items: baseline; font-size: .9rem; }
.notebooks .actions button, .bin button { border: 0; background: none; padding: .25rem 0; color: var(--accent); font: inherit; text-decoration: underline; text-underline-offset: .15em; cursor: pointer; }
.begin { display: grid; gap: 1rem; margin-top: 2rem; }
.begin form { display: flex; flex-wrap: wrap; gap: .5rem; align-items: center; }
.begin label { flex: 0 0 13rem; }
.begin input { flex: 1 1 14rem; font: inherit; color: inherit; background: transparent; border: 1px solid var(--faint); padding: .4rem .5rem; min-width: 0; }
.begin button { font: inherit; color: var(--paper); background: var(--accent); border: 1px solid var(--accent); padding: .4rem 1rem; cursor: pointer; }
.first .steps { padding-left: 1.25rem; max-width: 42rem; } .first .steps li { margin: .75rem 0; } .first form { margin: .35rem 0; }
.first :is(button, .go) { display: inline-block; text-decoration: none; font: inherit; color: var(--paper); background: var(--accent); border: 1px solid var(--accent); padding: .4rem 1rem; cursor: pointer; }
.first code { font: .95em "JetBrains Mono", ui-monospace, monospace; white-space: nowrap; }
.refused dt { font-weight: 600; } .refused dd { margin: 0 0 .5rem; overflow-wrap: anywhere; }
.bin { margin-top: 2rem; } .bin summary { cursor: pointer; color: var(--faint); }
.bin ul { list-style: none; padding: 0; } .bin li { display: flex; flex-wrap: wrap; gap: .25rem 1rem; align-items: baseline; justify-content: space-between; border-bottom: 1px solid var(--rule); padding: .25rem 0; }
.bin .actions { display: flex; flex-wrap: wrap; gap: .25rem 1rem; align-items: baseline; font-size: .9rem; } .bin .for-good[open] { flex-basis: 100%; } .bin .for-good p { max-width: 34rem; margin: .25rem 0; }
.bin .for-good summary { text-decoration: underline; text-underline-offset: .15em; } .bin .for-good button { color: var(--warning); font-weight: 600; }
.plain header .ways { margin-top: .5rem; } .first + .notebooks { border-top: 1px solid var(--rule); margin-top: 2rem; }
.ways { display: flex; flex-wrap: wrap; gap: .25rem 1.25rem; margin: 2rem 0 0; }
@page { margin: 14mm; }
@media print { :root { --paper: #fff; --ink: #000; --faint: #3c4146; --rule: #8b8b84; } .plain { max-width: none; padding: 0; } .plain a { color: inherit; }
.begin, .ways, .plain nav, .notebooks .actions, .bin { display: none; } .plain :is(h2, dt) { break-after: avoid; } }
${wordsStyle}${methodsStyle}`
