/** What the checker of units cannot know: said plainly, so that its silence is not taken for a proof. */
import { type Html, html } from '../html.js'

export const unitLimits: Html = html`<p>The checker reads the code of the cells; it never runs it, and the numbers are the same with and without it. It speaks
only where it is certain. Where it does not know a dimension it says nothing of it, and gives the reason: hover over the name, or run
<code>hoverfolio check FILE</code>. A notebook without findings has dimensions that fit as far as they are known. These it cannot see:</p>
<ul>
<li><strong>A wrong number in the right unit.</strong> A factor of two, an efficiency taken twice, <code>85 * u.m</code> for 85 km, a power of rotors
where one was meant: the dimension is right, so nothing is said. Shares, ratios and counts are all pure numbers.</li>
<li><strong>Two quantities of one dimension.</strong> Torque and energy, frequency and angular speed, pressure and a loading in N/m², an
acceleration and a force per mass. Money and decibels have no dimension here; they are pure numbers.</li>
<li><strong>Angles.</strong> A radian is a pure number, as SI has it, and <code>u.deg</code> a small one. Degrees without <code>u.deg</code> are noticed only
where a sine or another function of an angle is given more than a full turn.</li>
<li><strong>Temperatures.</strong> A temperature and a difference of two are both in kelvin. They are told apart where a method of the kernel says which it
gives or wants (<code>air.standard(...).temperature</code> against its offset); a bare <code>15 * u.K</code> may be either.</li>
<li><strong>Values from outside the code.</strong> What <code>JSON.parse</code> gives, a number read from text, a field or an argument declared
<code>number</code>. Declare it <code>Mass</code>, <code>Length</code> or <code>Power</code>, and it is known from there on. <code>as Mass</code> on a pure
number is believed.</li>
<li><strong>Exponents that may change.</strong> <code>length ** n</code> is known only where <code>n</code> is one number.</li>
<li><strong>Names that change behind the order of statements.</strong> A <code>let</code> takes the dimension of what it is given last; one that a function
changes when it is called later is not followed. Use a new name for a new quantity.</li>
<li><strong>Unlike things in one list.</strong> Where what is done with them parts by kind (<code>if (part.kind === 'mass')</code>) nothing is said.</li>
<li><strong>Rare forms.</strong> Generators, classes that extend one of the language, functions that call themselves and give no one dimension,
text as a unit that is put together while the cell runs.</li>
<li><strong>Words.</strong> Prose, captions, advisories and what is logged are text: no unit in them is checked, or changes with the units of the reader.</li>
</ul>`
