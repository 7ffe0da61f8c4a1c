/** Functions of cells: arrows, blocks, recursion, calls with several dimensions, default parameters. */
import { type Program, right, wrong } from './program.js'

export const functions: readonly Program[] = [
  right('const weight = (m: Mass) => m * u.g0\nconst w = weight(3 * u.kg)', { w: 'kg m s^-2' }),
  right('function speed(d: Length, t: Time) { return d / t }\nconst v = speed(3 * u.km, 2 * u.min)', { v: 'm s^-1' }),
  right('const square = (x) => x * x\nconst a = square(3 * u.m)\nconst b = square(3 * u.s)\nconst c = square(3)', {
    a: 'm^2',
    b: 's^2',
    c: '1',
  }),
  right(
    'const mean = (xs: number[]) => xs.reduce((s, x) => s + x, 0) / xs.length\nconst a = mean([1 * u.m, 2 * u.m])\nconst b = mean([1 * u.kg])',
    { a: 'm', b: 'kg' },
  ),
  right(
    'const lerp = (a: number, b: number, t: number) => a + (b - a) * t\nconst x = lerp(1 * u.m, 2 * u.m, 0.3)\nconst y = lerp(1 * u.s, 2 * u.s, 0.3)',
    { x: 'm', y: 's' },
  ),
  right('const same = <T>(x: T): T => x\nconst a = same(3 * u.kg)\nconst b = same({ d: 2 * u.m }).d', {
    a: 'kg',
    b: 'm',
  }),
  right('const first = <T>(xs: readonly T[]): T => xs[0]!\nconst a = first([3 * u.kg])', { a: 'kg' }),
  right('const power = (f: number, v: number, loss = 0 * u.W) => f * v + loss\nconst p = power(3 * u.N, 2 * u.mps)', {
    p: 'kg m^2 s^-3',
  }),
  right('const f = (m: Mass, g = u.g0) => m * g\nconst a = f(3 * u.kg)\nconst b = f(3 * u.kg, 1.62 * u.mps / u.s)', {
    a: 'kg m s^-2',
    b: 'kg m s^-2',
  }),
  right('const f = ({ m, g = u.g0 }: { m: Mass; g?: Acceleration }) => m * g\nconst a = f({ m: 3 * u.kg })', {
    a: 'kg m s^-2',
  }),
  right('const factorial = (n: number): number => (n < 2 ? 1 : n * factorial(n - 1))\nconst a = factorial(5) * u.m', {
    a: 'm',
  }),
  right(
    'function total(xs: readonly number[], i = 0): number { return i >= xs.length ? 0 : xs[i]! + total(xs, i + 1) }\nconst a = total([1 * u.kg, 2 * u.kg])',
    { a: 'kg' },
  ),
  right('function halve(m: Mass): Mass { return m < 1 * u.kg ? m : halve(m / 2) }\nconst a = halve(9 * u.kg)', {
    a: 'kg',
  }),
  right(
    'function even(n: number): boolean { return n === 0 || odd(n - 1) }\nfunction odd(n: number): boolean { return n !== 0 && even(n - 1) }\nconst a = even(4) ? 1 * u.m : 2 * u.m',
    { a: 'm' },
  ),
  right(
    'const solve = (f: (x: number) => number, from: number, to: number) => { let low = from, high = to; while (high - low > 1e-9 * Math.abs(to)) { const mid = (low + high) / 2; if (f(mid) > 0) high = mid; else low = mid } return low }\nconst v = solve((x) => x ** 2 - 9 * u.m2, 0 * u.m, 9 * u.m)',
    { v: 'm' },
  ),
  right(
    'const twice = (f: (x: number) => number) => (x: number) => f(f(x))\nconst a = twice((x) => x + 1 * u.m)(2 * u.m)',
    { a: 'm' },
  ),
  right('const compose = (f, g) => (x) => f(g(x))\nconst a = compose((x) => x * u.s, (x) => x / u.m)(3 * u.m2)', {
    a: 'm s',
  }),
  right('const f = (...parts: number[]) => parts.reduce((s, p) => s + p, 0)\nconst a = f(1 * u.kg, 2 * u.kg)', {
    a: 'kg',
  }),
  right('const f = (x: number) => { if (x > 2) return 1 * u.m\n return 0 }\nconst a = f(3)', { a: 'm' }),
  right(
    'const f = (x: number) => { const y = x ** 2; const z = y / x; return { y, z } }\nconst { y, z } = f(2 * u.m)',
    { y: 'm^2', z: 'm' },
  ),
  right(
    "const f = (kind: 'a' | 'b') => { switch (kind) { case 'a': return 1 * u.m; case 'b': return 2 * u.ft } }\nconst a = f('a')",
    { a: 'm' },
  ),
  right(
    'const f = (x: number) => { let sum = 0 * x\nfor (let i = 0; i < 3; i++) sum += x * i\nreturn sum }\nconst a = f(2 * u.kg)',
    { a: 'kg' },
  ),
  right('const g = (x: Length) => x * 2\nconst l = [1 * u.m, 2 * u.m].map(g)\nconst a = l[0]', { a: 'm' }),
  right('const f = (m: Mass): { weight: Force } => ({ weight: m * u.g0 })\nconst a = f(3 * u.kg).weight', {
    a: 'kg m s^-2',
  }),
  right('const f = () => () => 3 * u.kg\nconst a = f()()', { a: 'kg' }),
  right('const a = ((x: number) => x * u.kg)(3)', { a: 'kg' }),
  right('const f = function (x: number) { return x * u.kg }\nconst a = f(3)', { a: 'kg' }),
  right('const n = (k: number) => 2 * k\nconst a = (2 * u.m) ** n(1)', { a: 'm^2' }),
  right('const apply = (f: (m: Mass) => Force, m: Mass) => f(m)\nconst a = apply((m) => m * u.g0, 3 * u.kg)', {
    a: 'kg m s^-2',
  }),
  right('function f(x: number): number\nfunction f(x: number) { return x * 2 }\nconst a = f(2 * u.m)', { a: 'm' }),
  right(
    'const root = (f, x) => { for (let i = 0; i < 9; i++) { const h = 1e-6 * x; x = x - f(x) * h / (f(x + h) - f(x)) } return x }\nconst v = root((x) => x ** 2 - 9 * u.m2, 2 * u.m)',
    { v: 'm' },
  ),
  right(
    'const integrate = (f: (t: number) => number, a: number, b: number) => { let s = 0; const h = (b - a) / 10; for (let i = 0; i < 10; i++) s += f(a + i * h) * h; return s }\nconst d = integrate((t) => u.g0 * t, 0 * u.s, 3 * u.s)',
    { d: 'm' },
  ),
  right(
    'const sectors = [20, 40].map((km) => km * u.km)\nconst at = (d: Length, v: Speed) => d / v\nconst times = sectors.map((d) => at(d, 56 * u.mps))\nconst a = Math.max(...times)',
    { a: 's' },
  ),
  wrong('const weight = (m: Mass) => m * u.g0\nconst w = weight(3 * u.N)', 2, 'weight: m'),
  wrong('const weight = (m: Mass) => m * u.g0\nconst w = weight(3 * u.kg) + 1 * u.kg', 2, 'Cannot add'),
  wrong('function speed(d: Length, t: Time) { return d / t }\nconst v = speed(2 * u.min, 2 * u.min)', 2, 'speed: d'),
  wrong('const f = (d: Length): Area => d * 2', 1, 'The result of f wants m^2'),
  wrong('function f(d: Length): Area { if (d > 1 * u.m) return d ** 2\n return d }', 2, 'wants m^2'),
  wrong('const square = (x) => x * x\nconst a = square(3 * u.m) + 3 * u.m', 2, 'Cannot add'),
  wrong(
    'const mean = (xs: number[]) => xs.reduce((s, x) => s + x, 0) / xs.length\nconst a = mean([1 * u.m, 2 * u.m]) + 1 * u.s',
    2,
    'Cannot add',
  ),
  wrong(
    'const lerp = (a: number, b: number, t: number) => a + (b - a) * t\nconst x = lerp(1 * u.m, 2 * u.m, 3 * u.s)',
    2,
    'lerp does not work',
  ),
  wrong('const f = (m: Mass, g = u.g0) => m * g\nconst a = f(3 * u.kg) + 3 * u.kg', 2, 'Cannot add'),
  wrong('const f = (x: number, k = 2 * u.s) => x + k\nconst a = f(3 * u.m)', 2, 'f does not work'),
  wrong('const f = (m: Mass = 3 * u.m) => m', 1, 'wants kg'),
  wrong(
    'const factorial = (n: number): number => (n < 2 ? 1 : n * factorial(n - 1))\nconst a = factorial(5) + 2 * u.m',
    2,
    'Cannot add',
  ),
  wrong(
    'function total(xs: readonly number[], i = 0): number { return i >= xs.length ? 0 : xs[i]! + total(xs, i + 1) }\nconst a = total([1 * u.kg]) + 1 * u.m',
    2,
    'Cannot add',
  ),
  wrong('function grow(m: Mass): number { return m > 9 * u.kg ? m : grow(m * 2) + 1 * u.m }', 1, 'Cannot add'),
  wrong('const f = ({ m }: { m: Mass }) => m + 1 * u.m', 1, 'Cannot add m (kg)'),
  wrong('const f = ({ m }: { m: Mass }) => m\nconst a = f({ m: 3 * u.m })', 2, 'kg'),
  wrong('const f = (...parts: Mass[]) => parts.length\nconst a = f(1 * u.kg, 2 * u.m)', 2, 'kg'),
  wrong('const g = (x: Length) => x * 2\nconst l = [1 * u.kg].map(g)', 2, 'g'),
  wrong('const solve = (f, from) => f(from) + from\nconst v = solve((x) => x ** 2, 2 * u.m)', 2, 'solve does not work'),
  wrong('const f = () => 3 * u.kg\nconst g = () => f() + 2 * u.m', 2, 'Cannot add f() (kg)'),
  wrong(
    'const inner = (x) => x + 1 * u.kg\nconst outer = (y) => inner(y * u.m)\nconst a = outer(2)',
    3,
    'inner does not work',
  ),
  wrong('const f = (m: Mass) => { const w = m * u.g0\n return w + m }', 2, 'Cannot add w'),
  wrong(
    'const twice = (f: (x: number) => number) => (x: number) => f(f(x))\nconst a = twice((x) => x + 1 * u.m)(2 * u.s)',
    2,
    'add x',
  ),
]
