/** The words of the sheet, each in one sentence: only those that the program has today. */

export interface Term {
  readonly word: string
  /** Completes "the word means ...". */
  readonly meaning: string
}

export const terms: readonly Term[] = [
  { word: 'Notebook', meaning: 'A calculation sheet for one aircraft: a title block, and below it numbered cells.' },
  {
    word: 'Title block',
    meaning:
      'The head of the sheet: subject, project, basis, date, revision, and who prepared, checked and approved it; paper repeats it on every page.',
  },
  {
    word: 'Cell',
    meaning: 'One numbered row of the sheet across its three columns: Reference, Calculation and Result.',
  },
  {
    word: 'Rationale',
    meaning:
      'A cell of prose: what the aircraft must do, why it is laid out so, where a number comes from; formulas stand between dollar signs.',
  },
  {
    word: 'Sizing',
    meaning: 'A cell of TypeScript that works out numbers with the methods of the sizing kernel.',
  },
  { word: 'Compute', meaning: 'To work out a cell and everything that reads from it; this happens after every edit.' },
  { word: 'Compute all', meaning: 'To work out every cell anew.' },
  { word: 'Stop', meaning: 'To end a computation that takes long; the last good values stay, marked out of date.' },
  { word: 'Current', meaning: 'The values belong to the text as it stands.' },
  { word: 'Out of date', meaning: 'The values shown are the last ones; the text has changed since.' },
  { word: 'Computing', meaning: 'The cell is being worked out now.' },
  { word: 'Failed', meaning: 'The cell could not be worked out; a sentence beside it says why, and at which line.' },
  { word: 'Held back', meaning: 'A cell that this one reads from has failed.' },
  { word: 'Not computed', meaning: 'The cell has not been worked out yet.' },
  {
    word: 'Assumption',
    meaning: 'A value that the notebook rests on, stated with its range and its source; it stands under Reference.',
  },
  {
    word: 'Requirement',
    meaning: 'What the aircraft must do, as a bound on one of its numbers; it is met or not met.',
  },
  {
    word: 'Margin',
    meaning: 'The distance of the number from the bound of its requirement; a number beyond the bound misses by it.',
  },
  {
    word: 'Method',
    meaning: 'One equation or procedure of the kernel, with its source and the range in which it holds.',
  },
  {
    word: 'Advisory',
    meaning:
      'A note beside a number whose method has left the range of its data, or that is otherwise to be read with care.',
  },
  { word: 'Source', meaning: 'Where a value or a method comes from: a publication, a standard, a test, or a choice.' },
  {
    word: 'As written, SI, aviation',
    meaning:
      'Units in which this reader sees values: those of the author, of SI, or of aviation; the notebook stays as it is.',
  },
  {
    word: 'Hand calculation',
    meaning: 'A result written out as one would on paper: symbol, formula, numbers with their units, result.',
  },
  {
    word: 'Side drawer',
    meaning:
      'What stands beside the sheet: the register, the requirements, one number and what it is asked, the methods, the revisions.',
  },
  { word: 'Register', meaning: 'All assumptions in one list, to be sorted, filtered, tried and changed.' },
  {
    word: 'Trace',
    meaning: 'Where a number came from: back through cells, names and methods to the assumptions and their sources.',
  },
  {
    word: 'Drivers',
    meaning:
      'What moves a number: how far it goes when each assumption alone is varied, over its range and by one per cent.',
  },
  {
    word: 'Spread',
    meaning:
      'How sure a number is when all uncertain assumptions vary together, and how probable it is that each requirement is met.',
  },
  {
    word: 'Distribution',
    meaning: 'How likely each value of an assumption is, where a bare range only says how far it may lie.',
  },
  {
    word: 'Trial value',
    meaning:
      'A value that is tried in the register: the sheet computes with it and says so, and the notebook keeps its own until it is adopted.',
  },
  {
    word: 'Prepared, checked, approved',
    meaning: 'The persons who wrote the sheet, went through it, and answer for its use.',
  },
  {
    word: 'Revision',
    meaning: 'An issue of the sheet, text and results frozen under a letter, that these persons put their names to.',
  },
  {
    word: 'Fingerprint',
    meaning:
      'Characters that stand for exactly this text, these results and this kernel: another fingerprint, another sheet.',
  },
  { word: 'Bin', meaning: 'Where a notebook lies until it is taken out again or deleted for good.' },
]
