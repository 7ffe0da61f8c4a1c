/** Every box, by subject, with the seed of its samples. */
import { boxes as aircraft } from './aircraft.js'
import type { Box } from './engine.js'
import { boxes as figures } from './figures.js'
import { boxes as layouts } from './layouts.js'
import { boxes as limiting } from './limiting.js'
import { boxes as losses } from './losses.js'
import { boxes as masses } from './masses.js'
import { boxes as missions } from './missions.js'
import { boxes as parts } from './parts.js'
import { boxes as rotors } from './rotors.js'
import { boxes as systems } from './systems.js'
import { boxes as wings } from './wings.js'

export const subjects: readonly (readonly [title: string, boxes: readonly Box[], seed: number])[] = [
  ['air, rotors, propellers and sections', rotors, 50_261],
  ['wings and drag', wings, 50_262],
  ['batteries, powertrains, masses and reliability', systems, 50_263],
  ['layout, authority, mission, sizing and limits', aircraft, 50_264],
  ['masses by item and place', masses, 50_265],
  ['parts, lists and curves', parts, 50_266],
  ['layouts', layouts, 50_267],
  ['losses and their chances', losses, 50_268],
  ['limits', limiting, 50_269],
  ['missions and closing', missions, 50_270],
  ['figures and evidence', figures, 50_271],
]
