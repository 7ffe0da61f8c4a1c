import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { renderProse } from '../../../shared/rendering/index.js'
import { newDocument } from './support.js'

function prose(source: string): HTMLElement {
  const document = newDocument()
  const holder = document.createElement('div')
  holder.append(renderProse(document, source))
  return holder
}

const mathematics = new Set(
  'math mrow mi mo mn ms mtext mspace mfrac msqrt mroot msub msup msubsup munder mover munderover mmultiscripts mprescripts none mtable mtr mtd mpadded mphantom menclose mstyle'.split(
    ' ',
  ),
)
const text = new Set(
  'p h2 h3 h4 h5 h6 em strong code pre blockquote ul ol li hr br a table thead tbody tr th td div span'.split(' '),
)
const attributes = new Set('href title rel class align start'.split(' '))

/** Fails on anything a reader's browser could run, load or be misled by. */
function expectHarmless(holder: Element, source: string): void {
  for (const found of Array.from(holder.querySelectorAll('*'))) {
    const name = found.localName
    expect(text.has(name) || mathematics.has(name), `<${name}> from ${source}`).toBe(true)
    for (const attribute of Array.from(found.attributes)) {
      expect(attribute.name, source).not.toMatch(/^on|^style$|^src|^id$|^name$|^xlink|^xmlns:/i)
      if (text.has(name)) expect(attributes.has(attribute.name), `${attribute.name} from ${source}`).toBe(true)
      expect(attribute.value, source).not.toMatch(/^\s*(javascript|data|vbscript|blob|file):/i)
    }
    if (name === 'a') {
      expect(found.getAttribute('rel')).toBe('noopener noreferrer')
      const address = found.getAttribute('href') ?? ''
      expect(
        [...address].every((character) => character > ' ' && character !== '\\'),
        source,
      ).toBe(true)
      expect(address, source).toMatch(/^$|^https?:\/\/[^/]|^(?!\/\/)[^:]*([/?#]|$)/i)
    }
  }
}

const attacks = [
  '<script>alert(1)</script>',
  '<SCRIPT SRC=//x.example/a.js></SCRIPT>',
  '<img src=x onerror=alert(1)>',
  '<svg onload=alert(1)>',
  '<svg><script>alert(1)</script></svg>',
  '<math><mtext><script>alert(1)</script></mtext></math>',
  '<math><annotation-xml encoding="text/html"><img src=x onerror=alert(1)></annotation-xml></math>',
  '<math href="javascript:alert(1)">x</math>',
  '<math><mi xlink:href="javascript:alert(1)">x</mi></math>',
  '<iframe src="javascript:alert(1)"></iframe>',
  '<iframe srcdoc="<script>alert(1)</script>"></iframe>',
  '<object data="javascript:alert(1)"></object>',
  '<embed src="data:text/html,<script>alert(1)</script>">',
  '<a href="javascript:alert(1)">x</a>',
  '<body onload=alert(1)>',
  '<details open ontoggle=alert(1)>',
  '<style>@import "//x.example/a.css"</style>',
  '<link rel=stylesheet href=//x.example>',
  '<meta http-equiv=refresh content="0;url=javascript:alert(1)">',
  '<base href="//x.example/">',
  '<form action="javascript:alert(1)"><input type=submit></form>',
  '<template><img src=x onerror=alert(1)></template>',
  '<noscript><p title="</noscript><img src=x onerror=alert(1)>">',
  '<textarea><img title="</textarea><img src=x onerror=alert(1)>"></textarea>',
  '<p style="background:url(javascript:alert(1))">x</p>',
  '<!--><img src=x onerror=alert(1)>-->',
  '<![CDATA[<img src=x onerror=alert(1)>]]>',
  '[x](javascript:alert(1))',
  '[x](JaVaScRiPt:alert(1))',
  '[x](java\tscript:alert(1))',
  '[x](<java\nscript:alert(1)>)',
  '[x](&#106;avascript:alert(1))',
  '[x](&#x6A;&#x61;vascript&colon;alert(1))',
  '[x](\u0001javascript:alert(1))',
  '[x](data:text/html,<script>alert(1)</script>)',
  '[x](vbscript:msgbox(1))',
  '[x](//x.example/path)',
  '[x](/\\x.example)',
  '[x](blob:https://x.example/1)',
  '[x](file:///etc/passwd)',
  '<javascript:alert(1)>',
  '[x]: javascript:alert(1)\n\n[x]',
  '[x](https://x.example "\\" onmouseover=alert(1) ")',
  '[x](https://x.example/"onmouseover="alert(1))',
  '![x](javascript:alert(1))',
  '![x](https://x.example/a.png)',
  '![x" onerror="alert(1)](x)',
  '![](data:image/svg+xml;base64,PHN2ZyBvbmxvYWQ9YWxlcnQoMSk+)',
  '$\\href{javascript:alert(1)}{x}$',
  '$\\url{javascript:alert(1)}$',
  '$\\htmlClass{a}{b} \\htmlId{c}{d} \\htmlStyle{color:red}{e} \\htmlData{f=g}{h}$',
  '$\\includegraphics{https://x.example/a.png}$',
  '$\\text{<img src=x onerror=alert(1)>}$',
  '$\\unicode{x}</math><img src=x onerror=alert(1)>$',
  '$$\n\\frac{<script>alert(1)</script>\n$$',
  '$\\def\\a{\\a\\a}\\a$',
  '```html" onload="alert(1)\n<script>alert(1)</script>\n```',
  '`<img src=x onerror=alert(1)>`',
  '| a |\n|---|\n| <img src=x onerror=alert(1)> |',
  '# <svg/onload=alert(1)>',
  '> <iframe/src=javascript:alert(1)>',
  '&lt;script&gt;alert(1)&lt;/script&gt;',
  '<a/href=&#x6a&#x61&#x76&#x61script:alert(1)>x</a>',
  '<x onclick=alert(1)>x</x>',
]

describe('renderProse', () => {
  it('renderProse(document, source) meets at least forty attacks', () => {
    expect(attacks.length).toBeGreaterThanOrEqual(40)
  })

  it.each(attacks)('renderProse(document, %j) is harmless, also when written out and parsed again', (source) => {
    const holder = prose(source)
    expectHarmless(holder, source)
    const again = newDocument().createElement('div')
    again.innerHTML = holder.innerHTML
    expectHarmless(again, source)
  })

  it('renderProse(document, source) is harmless for any mixture of attacks', () => {
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...attacks), { minLength: 1, maxLength: 4 }), (parts) => {
        const source = parts.join('')
        expectHarmless(prose(source), source)
      }),
      { seed: 11, numRuns: 200 },
    )
  })

  it('renderProse(document, source) shows raw HTML as text', () => {
    expect(prose('a <b>c</b>').textContent).toContain('<b>c</b>')
    expect(prose('<script>alert(1)</script>').textContent).toContain('<script>alert(1)</script>')
  })

  it.each([
    'https://example.org/a?b=c#d',
    'http://example.org',
    '/methods/rotor',
    'methods#hover',
    '#cell-a',
    '?page=2',
    'a/b:c',
  ])('renderProse(document, link) keeps the address %s', (address) => {
    expect(prose(`[x](${address})`).querySelector('a')?.getAttribute('href')).toBe(address)
  })

  it('renderProse(document, image) says that a picture is not shown', () => {
    const holder = prose('![plan view](plan.png)')
    expect(holder.querySelector('img')).toBeNull()
    expect(holder.textContent).toContain('picture not shown: plan view')
  })

  it('renderProse(document, source) puts headings under the title of the sheet', () => {
    expect(prose('# One\n\n## Two\n\n###### Six').innerHTML).toContain('<h2>One</h2>')
    expect(prose('## Two').querySelector('h3')?.textContent).toBe('Two')
    expect(prose('###### Six').querySelector('h6')?.textContent).toBe('Six')
  })

  it('renderProse(document, tex) sets mathematics as MathML, inline and displayed', () => {
    const holder = prose('Speed $V_r$:\n\n$$\nP = \\frac{T^2}{2}\n$$\n')
    expect(holder.querySelectorAll('math').length).toBe(2)
    expect(holder.querySelector('.formula math')?.getAttribute('display')).toBe('block')
    expect(holder.querySelector('mfrac')).not.toBeNull()
    expect(holder.querySelector('[style]')).toBeNull()
  })

  it('renderProse(document, tex) displays a formula between double signs on one line, too', () => {
    expect(prose('Power\n\n$$P = T v$$\n').querySelector('math')?.getAttribute('display')).toBe('block')
    expect(prose('Power $P = T v$').querySelector('math')?.getAttribute('display')).toBeNull()
  })

  it('renderProse(document, tex) gives a formula that cannot be read back with the reason', () => {
    const holder = prose('$\\frac{1$')
    expect(holder.querySelector('.formula-unread code')?.textContent).toBe('\\frac{1')
    expect(holder.textContent).toMatch(/\(.*expected.*\)/i)
  })

  it('renderProse(document, table) keeps the alignment of columns', () => {
    const holder = prose('| a | b |\n|:--|--:|\n| 1 | 2 |')
    expect(holder.querySelectorAll('td')[1]?.getAttribute('align')).toBe('right')
  })

  it('renderProse(document, source) bears deep nesting', () => {
    const holder = prose(`${'> '.repeat(400)}deep`)
    expect(holder.textContent).toContain('deep')
  })
})
