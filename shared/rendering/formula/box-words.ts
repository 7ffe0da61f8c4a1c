/** Boxes as one line of words and signs: what is read aloud, and what stands where no formula can be drawn. */
import type { Box } from './box.js'

export function boxWords(box: Box): string {
  switch (box.box) {
    case 'row':
      return box.parts.map(boxWords).join('')
    case 'symbol':
      return box.words
    case 'word':
      return box.text
    case 'number':
      return box.unit === '' ? box.number : `${box.number}${box.unit === '°' ? '' : ' '}${box.unit}`
    case 'sign':
      return signWords(box)
    case 'fraction':
      return `${grouped(box.over)} / ${grouped(box.under)}`
    case 'power':
      return `${grouped(box.base)}^${grouped(box.exponent)}`
    case 'root':
      return box.degree === 2 ? `√(${boxWords(box.of)})` : `∛(${boxWords(box.of)})`
    case 'fence':
      return `${box.open}${boxWords(box.of)}${box.close}`
    case 'cases':
      return box.rows
        .map(({ value, when }) =>
          when === undefined ? `otherwise ${boxWords(value)}` : `${boxWords(value)} if ${boxWords(when)}`,
        )
        .join('; ')
  }
}

function signWords({ sign, space }: Extract<Box, { box: 'sign' }>): string {
  if (sign === '\u2062') return ' · '
  return space === 'both' ? ` ${sign} ` : space === 'after' ? `${sign} ` : sign
}

/** In brackets unless it is one thing already. */
function grouped(box: Box): string {
  const words = boxWords(box)
  const single = box.box === 'symbol' || box.box === 'word' || box.box === 'fence' || box.box === 'root'
  return single || (box.box === 'number' && box.unit === '' && !words.startsWith('−')) ? words : `(${words})`
}
