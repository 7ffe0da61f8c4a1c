/** Options that take a whole number. */
import { WrongCall } from './subcommand.js'

export function readWholeNumber(option: string, text: string, least: number, most: number): number {
  const number = Number(text)
  if (!/^\d+$/.test(text.trim()) || number < least || number > most)
    throw new WrongCall(`${option} wants a whole number from ${least} to ${most}; it got "${text}".`)
  return number
}
