/** Absolute temperatures and differences, told apart where the kernel's types or an annotation say which is meant. */
import { type Program, right, wrong } from './program.js'

const day = 'const day = air.standard(600 * u.m, 15 * u.K)\nconst warm = day.temperature'
const two = 'const t1 = air.standard(0).temperature\nconst t2 = air.standard(900 * u.m).temperature'

export const temperatures: readonly Program[] = [
  right(`${day}\nconst above = warm - 288.15 * u.K\nconst other = air.standard(0, above)`, { above: 'K' }),
  right(`${two}\nconst drop = t1 - t2\nconst again = air.standard(0, drop)`, { drop: 'K' }),
  right(`${two}\nconst film = (t1 + t2) / 2\nconst mu = air.dynamicViscosity(film)`, { film: 'K' }),
  right(`${two}\nconst film = 0.5 * (t1 + t2)\nconst mu = air.dynamicViscosity(film)`, { film: 'K' }),
  right(`${two}\nconst film = t1 + (t2 - t1) * 0.3\nconst mu = air.dynamicViscosity(film)`, { film: 'K' }),
  right(`${two}\nconst film = 0.3 * t1 + 0.7 * t2\nconst mu = air.dynamicViscosity(film)`, { film: 'K' }),
  right(`${two}\nconst sum = t1 + t2\nconst mean = sum / 2`, { mean: 'K' }),
  right(`${two}\nconst mean = -(t1 + t2) / -2`, { mean: 'K' }),
  right(`${two}\nconst mean = [t1, t2].reduce((s, t) => s + t) / 2`, { mean: 'K' }),
  right(`${two}\nconst all = [t1, t2]\nlet sum = 0\nfor (const t of all) sum += t\nconst mean = sum / all.length`, {
    mean: 'K',
  }),
  right(`${two}\nconst ratio = t1 / t2\nconst speed = 340 * u.mps * Math.sqrt(t1 / t2)`, {
    ratio: '1',
    speed: 'm s^-1',
  }),
  right(`${two}\nconst odd = t1 + t2 - t1\nconst mu = air.dynamicViscosity(odd)`, { odd: 'K' }),
  right(`${two}\nconst radiated = t1 ** 4 - t2 ** 4`, { radiated: 'K^4' }),
  right(`${day}\nconst celsius = (warm - 273.15 * u.K) / u.K`, { celsius: '1' }),
  right('const offset: TemperatureDifference = 15 * u.K\nconst day = air.standard(0, offset)', { offset: 'K' }),
  right('const offset: Temperature = 15 * u.K\nconst day = air.standard(0, offset)', { offset: 'K' }),
  right(`${day}\nconst hotter = warm + 20 * u.K\nconst mu = air.dynamicViscosity(hotter)`, { hotter: 'K' }),
  right(`${day}\nconst scaled = warm * 1.1`, { scaled: 'K' }),
  right(`${day}\nconst coldest = Math.min(warm, 278.15 * u.K)`, { coldest: 'K' }),
  wrong(`${two}\nconst t = t1 + t2`, 3, 'both are absolute temperatures'),
  wrong(`${two}\nconst mu = air.dynamicViscosity(t1 + t2)`, 3, 'both are absolute temperatures'),
  wrong(
    `${two}\nconst again = air.standard(0, t1)`,
    3,
    'wants a temperature difference but got an absolute temperature',
  ),
  wrong(
    `${two}\nconst mu = air.dynamicViscosity(t1 - t2)`,
    3,
    'wants an absolute temperature but got a temperature difference',
  ),
  wrong(`${two}\nconst odd = t1 - t2 - t1`, 3, 'not the other way about'),
  wrong(`${two}\nconst late = t1 - t2 > t2`, 3, 'need to be of one kind'),
  wrong(`${two}\nconst most = Math.max(t1, t1 - t2)`, 3, 'one kind'),
  wrong(
    `${two}\nconst f = (offset: TemperatureDifference) => air.standard(0, offset)\nconst a = f(t1)`,
    4,
    'f: offset wants a temperature difference',
  ),
  wrong('const hot: AbsoluteTemperature = 300 * u.K\nconst day = air.standard(0, hot)', 2, 'temperatureOffset'),
  wrong(`${two}\nconst all = [t1, t2].reduce((s, t) => s + t)`, 3, 'both are absolute temperatures'),
]
