/** How a sheet is read, written, printed, and what to do when something fails: the prose of the page of words and keys. */
import { limits } from '../../../shared/contracts/index.js'
import { type Html, html } from '../html.js'

const seconds = limits.evaluationMilliseconds / 1000

export const cellGuide: Html = html`<ul>
<li>The <code>//</code> lines that open a sizing cell are its heading: the first is the title, the others the remark below it. A folded cell shows
only these and its results.</li>
<li>A name has one owner. What <code>const</code> declares in one cell can be read in every other; two cells that declare one name are both an error,
and each says where the other is.</li>
<li>The order on the page does not decide the order of computing. A cell may read what is declared below it, as long as no cell reads itself in a
circle. Put cells in the order in which they are best read.</li>
<li>Numbers in the margin stay when a cell comes between: 3, then 3a. <em>Renumber cells</em> below the sheet counts them anew.</li>
<li><code>assumption</code>, <code>requirement</code>, <code>result</code> and <code>table</code> state what a reader should see of a cell. While
writing, Ctrl+Space proposes the methods of the kernel with their equation, their source and the range in which they hold.</li>
</ul>`

export const readingGuide: Html = html`<ul>
<li><strong>Hand calculation.</strong> Open the fold below the source of a sizing cell. It stays open for you, and prints when it is open.</li>
<li><strong>Figures by pointer.</strong> Point at a figure, or touch it, and the values nearest to that place stand beside it.</li>
<li><strong>Figures by keys.</strong> Tab to the drawing; the arrow keys then read its values, which are also said aloud.</li>
<li><strong>Figures as data.</strong> Below each figure its values open as a table. It can be taken away as SVG, PNG or CSV.</li>
<li><strong>Hatched values</strong> are out of date: they belong to an earlier text, or to the last run that went well.</li>
</ul>`

export const askingGuide: Html = html`<ul>
<li><strong>Press a number</strong>, or one of the words <em>trace, drivers, spread</em> below the results of a cell. The side drawer opens at the
number; any other can be chosen at its head.</li>
<li><strong>Trace</strong> lists every step from the assumptions to the number. An assumption that does not move it, all else as it stands, is marked
so, with the value from which it would.</li>
<li><strong>Drivers</strong> varies one assumption after another between the ends of its range, of its distribution (5 to 95 %), or by a tenth where
nothing is stated. An end at which the sheet does not compute is a result too, and is named.</li>
<li><strong>Spread</strong> draws all assumptions with a distribution together. The seed is shown: the same seed gives the same numbers. Assumptions with
a bare range are held, and varied apart. Samples that do not compute are counted, not left out.</li>
<li><strong>Trial values.</strong> In the register, move a slider or write another value: the sheet computes with it and is marked as a trial, for you
alone. <em>Adopt</em> writes it into the notebook, <em>Discard</em> forgets it, and a link shows the same trial to somebody else.</li>
<li><strong>Revisions.</strong> Issue one when text and results stand. Two revisions can be compared, and the change of a number is told apart into what
caused it. Whoever checks must not be who prepared.</li>
</ul>`

export const printGuide: Html = html`<p><em>Print sheets</em> in the bar, or the browser's own print, gives calculation sheets on A4 or Letter, with the
title block, the caution and the heads of the columns on every page. The source of every cell is printed, folded or not; hand calculations
as you have opened them. To keep a sheet as a file, print it to PDF. <em>Export file</em> below the sheet gives the notebook itself, which
<em>Import</em> on the list of notebooks takes in again.</p>`

export const troubleGuide: Html = html`<dl class="troubles">
<dt>A cell is failed</dt><dd>Read the sentence in its Result column and follow its link to the line. Undo takes back your last step.</dd>
<dt>A cell is held back</dt><dd>Mend the cell that it names; this one follows by itself.</dd>
<dt>A unit is refused</dt><dd>The message names both sides. Multiply a bare number by its unit, or divide by the unit to make a number of it.</dd>
<dt>A run does not end</dt><dd>Escape stops it. A run of more than ${seconds} s is ended by itself, and its cell says so.</dd>
<dt>The bar says “not connected”</dt><dd>Go on writing: edits are kept in this browser and delivered once the server answers. See that the server still runs.</dd>
<dt>The bar says “not saved”</dt><dd>It says why. Take the step back with Undo, or do it in smaller parts; until then your text stays in this browser.</dd>
<dt>Figures or formulas are missing</dt><dd>Load the page again.</dd>
<dt>A notebook will not open</dt><dd>The list of notebooks gives the reason and the name of its file, which is left as it is.</dd>
<dt>A notebook is gone</dt><dd>Look in the bin at the end of the list.</dd>
</dl>`
