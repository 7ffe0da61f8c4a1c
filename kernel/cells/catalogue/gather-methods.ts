/** Reads every function that cells see: its doc comment, part by part, and what its types say of arguments and results. */
import type ts from 'typescript'
import type { Method, MethodArgument, MethodForm } from '../../../shared/contracts/index.js'
import type { KernelDeclarations } from '../program/index.js'
import { describeType, docText, fieldsOf, type TypeReader } from './describe-type.js'
import { kernelProgram } from './kernel-program.js'

/** A method whose examples are still to be computed. */
export interface UncomputedMethod extends Omit<Method, 'forms'> {
  readonly forms: readonly (Omit<MethodForm, 'example'> & { readonly example: string })[]
}

/** Functions that stand in no namespace. */
const alone = 'evidence'

/**
 * In the order in which cells see them: namespace by namespace.
 *
 * @throws Error when the declarations hold no `preloaded`
 */
export function gatherMethods(typescript: typeof ts, declarations: KernelDeclarations): readonly UncomputedMethod[] {
  const program = kernelProgram(typescript, declarations)
  const checker = program.getTypeChecker()
  const reader: TypeReader = { typescript, checker }
  const file = program.getSourceFile(declarations.preloadedPath)
  const module = file === undefined ? undefined : checker.getSymbolAtLocation(file)
  const preloaded = (module === undefined ? [] : checker.getExportsOfModule(module)).find(
    (one) => one.name === 'preloaded',
  )
  if (preloaded === undefined)
    throw new Error(
      `${declarations.preloadedPath} exports no "preloaded"; gather the declarations of the kernel first.`,
    )
  return checker.getPropertiesOfType(checker.getTypeOfSymbol(preloaded)).flatMap((member) => {
    const type = checker.getTypeOfSymbol(member)
    if (type.getCallSignatures().length > 0) return [methodOf(reader, member.name, alone, type)]
    return checker.getPropertiesOfType(type).flatMap((inner) => {
      const own = checker.getTypeOfSymbol(inner)
      return own.getCallSignatures().length > 0
        ? [methodOf(reader, `${member.name}.${inner.name}`, member.name, own)]
        : []
    })
  })
}

function methodOf(reader: TypeReader, name: string, subject: string, type: ts.Type): UncomputedMethod {
  return { name, subject, forms: type.getCallSignatures().map((signature) => formOf(reader, signature)) }
}

function formOf(reader: TypeReader, signature: ts.Signature): UncomputedMethod['forms'][number] {
  const { typescript, checker } = reader
  const tags = signature.getJsDocTags()
  const all = (name: string) =>
    tags.filter((tag) => tag.name === name).map((tag) => typescript.displayPartsToString(tag.text))
  const one = (name: string) => docText(all(name)[0] ?? '')
  const returned = signature.getReturnType()
  const node = signature.getDeclaration()?.type
  const fields = fieldsOf(reader, returned)
  return {
    summary: docText(typescript.displayPartsToString(signature.getDocumentationComment(checker))),
    equation: one('equation'),
    takes: signature.getParameters().map((parameter) => argumentOf(reader, parameter)),
    arguments: all('param').map((text) => docText(text).replace(/^(\w+)\s+-?\s*/, '$1: ')),
    gives: {
      name: '',
      ...describeType(reader, returned, node),
      optional: false,
      text: one('returns'),
      ...(fields === undefined ? {} : { fields: [...fields] }),
    },
    throws: all('throws').map(docText),
    method: one('method'),
    validity: one('validity'),
    source: one('source'),
    example: all('example')[0]?.trim() ?? '',
  }
}

function argumentOf(reader: TypeReader, parameter: ts.Symbol): MethodArgument {
  const { typescript, checker } = reader
  const declaration = parameter.valueDeclaration
  const written = declaration !== undefined && typescript.isParameter(declaration) ? declaration : undefined
  const type = checker.getTypeOfSymbol(parameter)
  const fields = fieldsOf(reader, type)
  return {
    name: parameter.name,
    ...describeType(reader, type, written?.type),
    optional: written !== undefined && checker.isOptionalParameter(written),
    text: '',
    ...(fields === undefined ? {} : { fields: [...fields] }),
  }
}
