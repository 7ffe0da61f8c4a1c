/** The caution as the command prints it: one line, with the way to the full text. */
import { cautionLine } from '../../shared/contracts/index.js'

export const commandCaution = `${cautionLine} Cautions in full: hoverfolio help.`
