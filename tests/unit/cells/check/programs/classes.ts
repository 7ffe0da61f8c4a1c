/** Classes: what they take over, static members, accessors, what constructors are given. */
import { type Program, right, wrong } from './program.js'

const part = `class Part {
  constructor(readonly name: string, readonly mass: Mass) {}
  get weight() { return this.mass * u.g0 }
  moment(arm: Length) { return this.weight * arm }
}
`
const spar = `${part}class Spar extends Part {
  constructor(readonly length: Length, perLength: number) {
    super('spar', length * perLength)
  }
  density() { return this.mass / this.length }
  moment(arm: Length) { return super.moment(arm + this.length / 2) }
}
`

export const classes: readonly Program[] = [
  right(`${part}const p = new Part('wing', 180 * u.kg)\nconst w = p.weight\nconst m = p.moment(2 * u.m)`, {
    w: 'kg m s^-2',
    m: 'kg m^2 s^-2',
  }),
  right(
    `${spar}const s = new Spar(5 * u.m, (3 * u.kg) / u.m)\nconst w = s.weight\nconst d = s.density()\nconst m = s.moment(1 * u.m)`,
    { w: 'kg m s^-2', d: 'kg m^-1', m: 'kg m^2 s^-2' },
  ),
  right(
    'class A { x = 2 * u.m }\nclass B extends A {}\nclass C extends B { y = this.x ** 2 }\nconst a = new C().y / new C().x',
    { a: 'm' },
  ),
  right(
    'class Air { static density = (1.1 * u.kg) / u.m3; static at(v: Speed) { return 0.5 * this.density * v ** 2 } }\nconst q = Air.at(50 * u.mps)',
    {
      q: 'kg m^-1 s^-2',
    },
  ),
  right('class A { static limit = 14 * u.m }\nclass B extends A {}\nconst d = B.limit', { d: 'm' }),
  right('class A { static count = 0; static next() { A.count += 1; return A.count } }\nconst n = A.next()', { n: '1' }),
  right(
    'abstract class Shape { abstract area(): Area; load(w: Force) { return w / this.area() } }\nclass Disk extends Shape { constructor(readonly r: Length) { super() } area() { return Math.PI * this.r ** 2 } }\nconst dl = new Disk(1.3 * u.m).load(2 * u.kN)',
    { dl: 'kg m^-1 s^-2' },
  ),
  right(
    'interface Heavy { mass: Mass }\nclass Pack implements Heavy { mass = 300 * u.kg; energy() { return this.mass * ((200 * u.Wh) / u.kg) } }\nconst e = new Pack().energy()',
    { e: 'kg m^2 s^-2' },
  ),
  right('const Wing = class { span = 10 * u.m }\nconst b = new Wing().span', { b: 'm' }),
  right(
    'class T { #m = 3 * u.kg; get m() { return this.#m } set m(v: Mass) { this.#m = v } }\nconst t = new T()\nt.m = 4 * u.kg\nconst a = t.m',
    {
      a: 'kg',
    },
  ),
  wrong(`${part}const p = new Part('wing', 180 * u.N)`, 6, 'new Part: mass wants kg'),
  wrong(`${part}const p = new Part('wing', 180 * u.kg)\nconst s = p.weight + 3 * u.kg`, 7, 'Cannot add p.weight'),
  wrong(`${spar}const s = new Spar(5 * u.m, (3 * u.kg) / u.m)\nconst x = s.weight + s.mass`, 14, 'Cannot add'),
  wrong(`${spar}const s = new Spar(5 * u.s, (3 * u.kg) / u.m)`, 13, 'new Spar: length wants m'),
  wrong('class A { x = 2 * u.m }\nclass B extends A { y() { return this.x + 1 * u.kg } }', 2, 'Cannot add this.x (m)'),
  wrong(
    'class Air { static density = (1.1 * u.kg) / u.m3 }\nconst q = Air.density + 1 * u.Pa',
    2,
    'Cannot add Air.density',
  ),
  wrong('class A { static of(d: Length) { return d ** 2 } }\nconst a: Length = A.of(2 * u.m)', 2, 'a wants m'),
  wrong(
    'class A { constructor(readonly m: Mass) {} }\nclass B extends A {}\nconst b = new B(3 * u.m)',
    3,
    'new B: m wants kg',
  ),
  wrong(
    'class A { get area() { return 3 * u.m } load(w: Force): Pressure { return w / this.area } }',
    1,
    'The result of load wants',
  ),
]
