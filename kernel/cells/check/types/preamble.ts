/**
 * The generated file that shows the kernel to cells as globals. Each name is spelled as a path into the kernel's own
 * declarations, so that its doc comments follow it. What a cell owns is left out: the kernel's gives way.
 */
import type ts from 'typescript'

export interface KernelNames {
  /** Members of `preloaded`. */
  readonly values: readonly string[]
  /** Exported types with their type parameters as written: `Quantity` to `<D extends string>`. */
  readonly types: ReadonlyMap<string, TypeName>
}

export interface TypeName {
  readonly parameters: readonly { readonly name: string; readonly text: string }[]
}

/** Reads the names out of the kernel's entry file and the index beside it. */
export function readKernelNames(
  typescript: typeof ts,
  checker: ts.TypeChecker,
  files: readonly ts.SourceFile[],
): KernelNames {
  const values: string[] = []
  const types = new Map<string, TypeName>()
  for (const file of files) {
    const module = checker.getSymbolAtLocation(file)
    for (const exported of module === undefined ? [] : checker.getExportsOfModule(module)) {
      const symbol = exported.flags & typescript.SymbolFlags.Alias ? checker.getAliasedSymbol(exported) : exported
      if (symbol.name === 'preloaded' && values.length === 0)
        values.push(...checker.getPropertiesOfType(checker.getTypeOfSymbol(symbol)).map((property) => property.name))
      if (symbol.flags & (typescript.SymbolFlags.TypeAlias | typescript.SymbolFlags.Interface))
        types.set(exported.name, { parameters: parametersOf(typescript, symbol) })
    }
  }
  return { values, types }
}

function parametersOf(typescript: typeof ts, symbol: ts.Symbol): TypeName['parameters'] {
  const declaration = symbol.declarations?.[0]
  if (declaration === undefined) return []
  if (!typescript.isTypeAliasDeclaration(declaration) && !typescript.isInterfaceDeclaration(declaration)) return []
  return (declaration.typeParameters ?? []).map((parameter) => ({
    name: parameter.name.text,
    text: parameter.getText(),
  }))
}

/** `without` holds the names that cells declare, as values or as types. */
export function writePreamble(
  names: KernelNames,
  modules: { readonly values: string; readonly types: string },
  without: ReadonlySet<string>,
): string {
  const values = names.values
    .filter((name) => !without.has(name))
    .map((name) => `declare const ${name}: typeof import('${modules.values}').preloaded.${name};`)
  const types = [...names.types]
    .filter(([name]) => !without.has(name))
    .map(([name, { parameters }]) => {
      const declared = parameters.length === 0 ? '' : `<${parameters.map((one) => one.text).join(', ')}>`
      const passed = parameters.length === 0 ? '' : `<${parameters.map((one) => one.name).join(', ')}>`
      return `declare type ${name}${declared} = import('${modules.types}').${name}${passed};`
    })
  return [...values, ...types, ''].join('\n')
}
