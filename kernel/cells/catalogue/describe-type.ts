/** What a type of the kernel is in words, its dimension, and its fields where it is a record. */
import type ts from 'typescript'
import type { MethodQuantity } from '../../../shared/contracts/index.js'

export interface TypeReader {
  readonly typescript: typeof ts
  readonly checker: ts.TypeChecker
}

/** Choices of text longer than this are cut. */
const longestKind = 120
/** A number type names its dimension in the literal type of an optional property of this name. */
const markerName = /^__@dimension@\d+$/

export interface DescribedType {
  readonly kind: string
  readonly dimension: string | null
}

/** `node` is the type as written, whose name says more than what it stands for: `Force` and `DiskLoading` are numbers both. */
export function describeType(reader: TypeReader, type: ts.Type, node: ts.TypeNode | undefined): DescribedType {
  const plain = reader.checker.getNonNullableType(type)
  const dimension = dimensionOf(reader, plain)
  const named = node === undefined ? undefined : nameOf(reader, node)
  if (dimension !== null)
    return { kind: named === undefined || named === 'Ratio' ? 'number' : inWords(named), dimension }
  const element = elementOf(reader, plain)
  if (element !== undefined) {
    const each = describeType(reader, element, node === undefined ? undefined : elementNode(reader, node))
    return { kind: `list, each: ${each.kind}`, dimension: each.dimension }
  }
  if (plain.getCallSignatures().length > 0) return { kind: 'function', dimension: null }
  if (named !== undefined && plain.flags & reader.typescript.TypeFlags.Object)
    return { kind: inWords(named), dimension: null }
  return { kind: wordsFor(reader.checker.typeToString(plain)), dimension: null }
}

/** The fields of a record that the kernel declares, of either where it is one of several; `undefined` for anything else. */
export function fieldsOf(reader: TypeReader, type: ts.Type): readonly MethodQuantity[] | undefined {
  const plain = reader.checker.getNonNullableType(type)
  const records = plain.isUnion() ? plain.types : [plain]
  if (!records.every((record) => isRecord(reader, record))) return undefined
  const each = records.map((record) => readableFields(reader, record))
  const fields = new Map<string, MethodQuantity>()
  for (const field of each.flat()) {
    const everywhere = each.every((one) => one.some(({ name }) => name === field.name))
    if (!fields.has(field.name))
      fields.set(field.name, { ...describeField(reader, field), ...(everywhere ? {} : { optional: true }) })
  }
  return fields.size === 0 ? undefined : [...fields.values()]
}

function isRecord(reader: TypeReader, type: ts.Type): boolean {
  const { Object: plain, Intersection: joined } = reader.typescript.TypeFlags
  return (
    (type.flags & (plain | joined)) !== 0 &&
    elementOf(reader, type) === undefined &&
    type.getCallSignatures().length === 0 &&
    dimensionOf(reader, type) === null
  )
}

/** Without those that only throw when they are read: their type is `never`. */
function readableFields({ checker, typescript }: TypeReader, record: ts.Type): readonly ts.Symbol[] {
  return checker
    .getPropertiesOfType(record)
    .filter((field) => !(checker.getTypeOfSymbol(field).flags & typescript.TypeFlags.Never))
}

function describeField(reader: TypeReader, field: ts.Symbol): MethodQuantity {
  const { checker, typescript } = reader
  const declaration = field.valueDeclaration ?? field.declarations?.[0]
  const node = declaration !== undefined && typescript.isPropertySignature(declaration) ? declaration.type : undefined
  return {
    name: field.name,
    ...describeType(reader, checker.getTypeOfSymbol(field), node),
    optional: (field.flags & typescript.SymbolFlags.Optional) !== 0,
    text: docText(typescript.displayPartsToString(field.getDocumentationComment(checker))),
  }
}

function dimensionOf({ typescript, checker }: TypeReader, type: ts.Type): string | null {
  if (!type.isIntersection() || !type.types.some((part) => part.flags & typescript.TypeFlags.NumberLike)) return null
  for (const property of type.types.flatMap((part) => checker.getPropertiesOfType(part))) {
    if (!markerName.test(property.escapedName as string)) continue
    const marked = checker.getTypeOfSymbol(property)
    for (const part of marked.isUnion() ? marked.types : [marked]) if (part.isStringLiteral()) return part.value
  }
  return null
}

function elementOf({ checker, typescript }: TypeReader, type: ts.Type): ts.Type | undefined {
  return checker.isArrayType(type) ? checker.getIndexTypeOfType(type, typescript.IndexKind.Number) : undefined
}

function elementNode({ typescript }: TypeReader, node: ts.TypeNode): ts.TypeNode | undefined {
  const inner = typescript.isTypeOperatorNode(node) ? node.type : node
  if (typescript.isArrayTypeNode(inner)) return inner.elementType
  return typescript.isTypeReferenceNode(inner) ? inner.typeArguments?.[0] : undefined
}

function nameOf({ typescript }: TypeReader, node: ts.TypeNode): string | undefined {
  return typescript.isTypeReferenceNode(node) &&
    typescript.isIdentifier(node.typeName) &&
    node.typeArguments === undefined
    ? node.typeName.text
    : undefined
}

/** `DiskLoading` as `disk loading`; what only collects options has no name of its own. */
function inWords(name: string): string {
  if (name.endsWith('Options')) return 'options'
  return name.replace(/(?<=[a-z\d])(?=[A-Z])/g, ' ').toLowerCase()
}

/** Types that TypeScript can only spell out are records. */
function wordsFor(text: string): string {
  if (text.includes('{') || /^(?:Partial|Pick|Omit|Loose|Readonly|Record|Required)</.test(text)) return 'record'
  const quoted = text.replaceAll('"', "'")
  return quoted.length > longestKind ? `${quoted.slice(0, longestKind)} …` : quoted
}

/** Lines of a doc comment are one paragraph. */
export function docText(text: string): string {
  return text.replace(/\s*\n\s*/g, ' ').trim()
}
