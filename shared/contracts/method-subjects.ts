/** The kernel's namespaces, each a subject of the catalogue; a test compares them with what cells see. */
export const methodSubjects = [
  'air',
  'section',
  'rotor',
  'propeller',
  'wing',
  'drag',
  'battery',
  'powertrain',
  'layout',
  'limits',
  'mass',
  'mission',
  'authority',
  'reliability',
  'sizing',
  'figure',
] as const
