/** The few words the server says to its operator; pino has this shape, tests collect instead. */

export interface Log {
  info(fields: Readonly<Record<string, unknown>>, message: string): void
  warn(fields: Readonly<Record<string, unknown>>, message: string): void
  error(fields: Readonly<Record<string, unknown>>, message: string): void
}

export const silentLog: Log = { info() {}, warn() {}, error() {} }
