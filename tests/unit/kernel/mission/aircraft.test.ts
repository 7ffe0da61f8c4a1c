import { describe, expect, it } from 'vitest'
import { InvalidInput, preloaded } from '../../../../kernel/library/index.js'
import { craft, options, withBattery, withCruise, withLift } from './craft.js'

const { battery, mission } = preloaded
type Options = Parameters<typeof mission.aircraft>[0]
type Segments = Parameters<typeof mission.segments>[0]

describe('mission.aircraft(options)', () => {
  it('completes and freezes the record, and takes its own answer again', () => {
    expect(craft).toMatchObject({ stallMargin: 1.3, conversionMargin: 1.2, hotelPower: 2000 })
    expect(craft.lift).toMatchObject({ inducedFactor: 1.15, interference: 1, control: 'speed' })
    expect(craft.battery).toMatchObject({ floor: 0.1, conductance: 0, rating: 'peak' })
    expect(Object.isFrozen(craft) && Object.isFrozen(craft.lift) && Object.isFrozen(craft.battery)).toBe(true)
    expect(mission.aircraft(craft)).toEqual(craft)
  })

  it('ages the cells as battery.aged does', () => {
    const life = { capacityLeft: 0.8, resistanceGrowth: 1.5 }
    const old = mission.aircraft(withBattery({ aged: life }))
    expect(old.battery?.cell).toEqual(battery.aged({ cell: battery.cells.power18650, ...life }))
  })

  it('may have no battery', () => {
    const { battery: _, ...without } = options
    expect(mission.aircraft(without).battery).toBeUndefined()
  })

  it.each<[string, object, RegExp]>([
    ['no mass', { ...options, mass: 0 }, /mass/],
    ['no wing', { ...options, wingArea: -1 }, /wingArea/],
    ['no polar', { ...options, polar: undefined }, /polar/],
    ['a lift coefficient beyond any', { ...options, maximumLift: 20 }, /maximumLift/],
    ['a negative hotel power', { ...options, hotelPower: -1 }, /hotelPower/],
    ['a margin below 1', { ...options, stallMargin: 0.9 }, /stallMargin/],
    ['a conversion margin below 1', { ...options, conversionMargin: 0.9 }, /conversionMargin/],
    ['a misspelt option', { ...options, wingarea: 15 }, /wingarea.*wingArea/],
    ['a misspelt option of the rotors', withLift({ diskarea: 15 }), /diskarea/],
    ['no disk', withLift({ diskArea: 0 }), /lift.diskArea/],
    ['an efficiency above 1', withLift({ efficiency: 1.1 }), /lift.efficiency/],
    ['no tip speed', withLift({ tipSpeed: 0 }), /lift.tipSpeed/],
    ['an induced factor below 1', withLift({ inducedFactor: 0.9 }), /lift.inducedFactor/],
    ['an interference below 1', withLift({ interference: 0.9 }), /lift.interference/],
    ['a download above a half', withLift({ download: 0.6 }), /lift.download/],
    ['an unknown control', withLift({ control: 'spede' }), /lift.control.*"speed"/],
    ['no blade loading', withLift({ greatestBladeLoading: 0 }), /lift.greatestBladeLoading/],
    ['a negative area', withLift({ uncoveredDragArea: -1 }), /lift.uncoveredDragArea/],
    ['no power', withLift({ powerLimit: 0 }), /lift.powerLimit/],
    ['no rotor', withLift({ count: 0 }), /lift.count/],
    ['no solidity', withLift({ solidity: 0 }), /lift.solidity/],
    ['a figure of merit above 1', withLift({ figureOfMerit: 1.1 }), /lift.figureOfMerit/],
    ['both ways of losses', withLift({ profileDrag: 0.01 }), /given together/],
    ['neither way of losses', withLift({ figureOfMerit: undefined }), /missing; it must be one of the two/],
    ['negative profile drag', withLift({ figureOfMerit: undefined, profileDrag: -1 }), /lift.profileDrag/],
    [
      'blades without solidity',
      withLift({ figureOfMerit: undefined, profileDrag: 0.01, solidity: undefined }),
      /solidity/,
    ],
    [
      'blades without tip speed',
      withLift({ figureOfMerit: undefined, profileDrag: 0.01, tipSpeed: undefined }),
      /tipSpeed/,
    ],
    ['no propeller', withCruise({ propellerEfficiency: 0 }), /cruise.propellerEfficiency/],
    ['no chain', withCruise({ efficiency: 0 }), /cruise.efficiency/],
    ['no rating', withCruise({ powerLimit: 0 }), /cruise.powerLimit/],
    ['no static thrust', withCruise({ staticThrust: 0 }), /cruise.staticThrust/],
    ['a misspelt option of the propeller', withCruise({ rating: 5 }), /option "rating"/],
    ['no cell', withBattery({ cell: 5 }), /cell/],
    ['no series', withBattery({ series: 0 }), /battery.series/],
    ['no strings', withBattery({ parallel: 0 }), /battery.parallel/],
    ['a floor of all', withBattery({ floor: 1 }), /battery.floor/],
    ['a pack that cools at once', withBattery({ conductance: 1e9 }), /battery.conductance/],
    ['an unknown rating', withBattery({ rating: 'burst' }), /rating/],
    ['a misspelt option of the battery', withBattery({ serie: 5 }), /option "serie"/],
  ])('refuses %s', (_, wrong, message) => {
    const call = () => mission.aircraft(wrong as Options)
    expect(call).toThrow(InvalidInput)
    expect(call).toThrow(message)
  })
})

describe('mission.segments(list)', () => {
  it('freezes a list of its own', () => {
    const given = [{ kind: 'hover' as const, time: 60 }]
    const checked = mission.segments(given)
    expect(checked).toEqual(given)
    expect(Object.isFrozen(checked) && Object.isFrozen(checked[0])).toBe(true)
  })

  it.each<[string, unknown, RegExp]>([
    ['no list', 5, /a list of 1 to 200 segments/],
    ['an empty list', [], /a list of 0/],
    ['a segment that is none', [5], /segments\[0\]/],
    ['a kind that is none', [{ kind: 'hove' }], /segments\[0\].kind.*"hover"/],
    ['a hover without time', [{ kind: 'hover' }], /segments\[0\].time/],
    ['a negative time', [{ kind: 'hover', time: -1 }], /segments\[0\].time/],
    ['a height without rate', [{ kind: 'vertical climb', height: 5 }], /segments\[0\].rate/],
    ['a climb to nowhere', [{ kind: 'climb' }], /segments\[0\].to/],
    ['a rate of 0', [{ kind: 'descent', to: 5, rate: 0 }], /segments\[0\].rate/],
    ['an option of another kind', [{ kind: 'hover', time: 5, speed: 5 }], /segments\[0\] \(hover\): option "speed"/],
    ['an unknown rule', [{ kind: 'cruise', time: 5, speed: 'best rnge' }], /segments\[0\].speed.*"best range"/],
    ['a speed of 0', [{ kind: 'cruise', time: 5, speed: 0 }], /segments\[0\].speed/],
    ['a rule for a transition', [{ kind: 'transition', speed: 'best range' }], /segments\[0\].speed/],
    ['a reserve without end', [{ kind: 'reserve' }], /segments\[0\].time or .distance.*missing/],
    ['time and distance', [{ kind: 'cruise', time: 5, distance: 5 }], /given together/],
    ['a name that is empty', [{ kind: 'hover', time: 5, name: '' }], /segments\[0\].name/],
    ['a wind that is none', [{ kind: 'cruise', time: 5, tailwind: Number.NaN }], /segments\[0\].tailwind/],
  ])('refuses %s', (_, list, message) => {
    const call = () => mission.segments(list as Segments)
    expect(call).toThrow(InvalidInput)
    expect(call).toThrow(message)
  })
})
