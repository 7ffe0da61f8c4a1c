/** Inside its declared validity a function answers; it refuses and advises where its doc comment says that it does. */
import { boxes as aircraft } from './boxes/aircraft.js'
import { holdBoxes } from './boxes/engine.js'
import { boxes as layouts } from './boxes/layouts.js'
import { boxes as limiting } from './boxes/limiting.js'
import { boxes as losses } from './boxes/losses.js'
import { boxes as masses } from './boxes/masses.js'
import { boxes as missions } from './boxes/missions.js'
import { boxes as parts } from './boxes/parts.js'
import { boxes as rotors } from './boxes/rotors.js'
import { boxes as systems } from './boxes/systems.js'
import { boxes as wings } from './boxes/wings.js'

holdBoxes('air, rotors, propellers and sections', rotors, 50_261)
holdBoxes('wings and drag', wings, 50_262)
holdBoxes('batteries, powertrains, masses and reliability', systems, 50_263)
holdBoxes('layout, authority, mission, sizing and limits', aircraft, 50_264)
holdBoxes('masses by item and place', masses, 50_265)
holdBoxes('parts, lists and curves', parts, 50_266)
holdBoxes('layouts', layouts, 50_267)
holdBoxes('losses and their chances', losses, 50_268)
holdBoxes('limits', limiting, 50_269)
holdBoxes('missions and closing', missions, 50_270)
