/** How numbers get units, and which there are: straight from the table of units. */
import { formatDimension, type UnitDefinition, unitTable } from '../../../shared/contracts/index.js'
import { type Html, html } from '../html.js'

/** What is measured, by dimension in base units. */
const quantities: Readonly<Record<string, string>> = {
  m: 'Length',
  kg: 'Mass',
  s: 'Time',
  'kg m s^-2': 'Force',
  'kg m^2 s^-3': 'Power',
  'kg m^2 s^-2': 'Energy',
  'kg m^-1 s^-2': 'Pressure',
  'm^2': 'Area',
  'm^3': 'Volume',
  'm s^-1': 'Speed',
  '1': 'Angle',
  's^-1': 'Angular speed, frequency',
  K: 'Temperature',
  A: 'Current',
  'kg m^2 s^-3 A^-1': 'Voltage',
  'kg m^2 s^-3 A^-2': 'Resistance',
  's A': 'Charge',
  'm s^-2': 'Acceleration',
}

export const unitRules: Html = html`<p>A number gets its unit by multiplication, and loses it by division: <code>const payload = 400 * u.kg</code>,
<code>power / u.kW</code>. Units multiply and divide as the numbers do: <code>235 * u.Wh / u.kg</code>. Inside, every number is in SI; the
checker follows its dimension through the arithmetic and says where two do not fit.</p>
<p>Where a unit is written as text (the unit in which a result is shown, a value tried with <code>--set</code>) it reads
<code>"Wh/kg"</code>, <code>"kg m^2 s^-3"</code>, <code>"m/s"</code> or <code>"%"</code>. Temperatures are in kelvin; a reading in degrees Celsius has an offset and is
refused.</p>
<p>A value is shown in the unit that the trade uses at its size: W, then kW; m, then km. An author fixes another by stating it:
<code>const reach = result('reach', range + reserve, { unit: 'nmi' })</code>, and the same <code>unit</code> in <code>assumption</code> and
<code>requirement</code>, <code>units</code> by field in <code>table</code>. A unit of another dimension is refused in words while it is written.</p>
<p>A reader chooses in the bar: <em>as written</em> keeps what the author fixed; <em>SI</em> shows m, km, kg, m/s, N and Pa in place of ft, nmi, lb, kt, lbf and psf, and
leaves the author's units that belong to SI or are used with it, such as kWh, km/h and min; <em>aviation</em> shows ft, nmi, in, lb, kt, lbf, ft², lb/ft², psf and slug/ft³ instead, rates of climb in ft/min, speeds
of blade tips in ft/s. A length in km becomes nmi (an altitude ft), one in m becomes ft, one in mm inches. Power, energy, voltage, time, angle and temperature are read alike in both;
temperatures stay in K, because °F and °C have an offset that a difference of temperatures has not. The choice holds for values, requirements, tables, figures, the numbers of hand
calculations, the drawer, print and files taken away; it is kept in this browser and never enters the notebook. The source, formulas as written, prose and revisions with
their comparison stay as they are.
The command has <code>--units SI</code> and <code>--units aviation</code>.</p>`

export const unitList: Html = html`<dl class="units">
${[...byQuantity()].map(([quantity, units]) => html`<div><dt>${quantity}</dt>${units.map(unit)}</div>\n`)}</dl>`

function byQuantity(): ReadonlyMap<string, readonly UnitDefinition[]> {
  const groups = new Map<string, UnitDefinition[]>()
  for (const each of unitTable) {
    const dimension = formatDimension(each.dimension)
    const quantity = quantities[dimension] ?? dimension
    groups.set(quantity, [...(groups.get(quantity) ?? []), each])
  }
  return groups
}

function unit({ symbol, name }: UnitDefinition): Html {
  return html`<dd><code>u.${symbol}</code> ${name}</dd>`
}
