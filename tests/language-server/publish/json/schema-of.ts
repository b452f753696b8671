/**
 * The JSON Schema (2020-12) of a TypeScript type, worked out with the TypeScript compiler: interfaces and named types
 * become `$defs`, comments become descriptions. Knows what the shape of a published procedure uses, and throws on
 * anything else, so that a gap is seen.
 */
import ts from 'typescript';

export type Schema = { [key: string]: unknown };

export function schemaOf(file: string, typeName: string, head: Schema): Schema {
  const program = ts.createProgram([file], {
    strict: true,
    exactOptionalPropertyTypes: false,
    target: ts.ScriptTarget.ES2023,
    module: ts.ModuleKind.NodeNext,
    moduleResolution: ts.ModuleResolutionKind.NodeNext,
    allowImportingTsExtensions: true,
    noEmit: true,
    types: [],
  });
  const source = program.getSourceFile(file);
  const checker = program.getTypeChecker();
  const symbol = source && checker.getSymbolAtLocation(source);
  const exported = symbol && checker.getExportsOfModule(symbol).find((one) => one.name === typeName);
  if (!exported) throw new Error(`${typeName} is not exported`);
  const writer = new Writer(checker);
  const root = writer.of(checker.getDeclaredTypeOfSymbol(exported));
  const defs = Object.fromEntries([...writer.defs].sort(([a], [b]) => (a < b ? -1 : 1)));
  return { ...head, ...root, $defs: defs };
}

class Writer {
  readonly defs = new Map<string, Schema>();
  private readonly checker: ts.TypeChecker;

  constructor(checker: ts.TypeChecker) {
    this.checker = checker;
  }

  of(type: ts.Type): Schema {
    const named = type.aliasSymbol ?? (isInterface(type) ? type.symbol : undefined);
    if (!named) return this.inline(type);
    if (!this.defs.has(named.name)) {
      this.defs.set(named.name, {});
      const description = this.comment(named);
      this.defs.set(named.name, { ...(description ? { description } : {}), ...this.inline(type) });
    }
    return { $ref: `#/$defs/${named.name}` };
  }

  private inline(type: ts.Type): Schema {
    if (type.isUnion()) return this.union(type);
    if (type.isStringLiteral() || type.isNumberLiteral()) return { const: type.value };
    if (type.flags & ts.TypeFlags.BooleanLiteral)
      return { const: this.checker.typeToString(type) === 'true' };
    if (type.flags & ts.TypeFlags.String) return { type: 'string' };
    if (type.flags & ts.TypeFlags.Number) return { type: 'number' };
    if (type.flags & ts.TypeFlags.Boolean) return { type: 'boolean' };
    if (this.checker.isArrayType(type)) {
      const [item] = this.checker.getTypeArguments(type as ts.TypeReference);
      return { type: 'array', items: this.of(item!) };
    }
    const index = this.checker.getIndexInfoOfType(type, ts.IndexKind.String);
    if (index) return { type: 'object', additionalProperties: this.of(index.type) };
    if (type.flags & ts.TypeFlags.Object || type.isIntersection()) return this.object(type);
    throw new Error(`no schema for ${this.checker.typeToString(type)}`);
  }

  private union(type: ts.UnionType): Schema {
    const members = type.types.filter((one) => !(one.flags & ts.TypeFlags.Undefined));
    if (members.every((one) => one.flags & ts.TypeFlags.BooleanLiteral) && members.length === 2)
      return { type: 'boolean' };
    if (members.every((one) => one.isStringLiteral() || one.isNumberLiteral()))
      return { enum: inOrder(members.map((one) => (one as ts.LiteralType).value)) };
    if (members.length === 1) return this.of(members[0]!);
    return { anyOf: inOrder(members.map((one) => this.of(one))) };
  }

  private object(type: ts.Type): Schema {
    const properties: Schema = {};
    const required: string[] = [];
    for (const property of this.checker.getPropertiesOfType(type)) {
      const description = this.comment(property);
      const schema = this.of(this.checker.getTypeOfSymbol(property));
      properties[property.name] = { ...(description ? { description } : {}), ...schema };
      if (!(property.flags & ts.SymbolFlags.Optional)) required.push(property.name);
    }
    return { type: 'object', properties, required, additionalProperties: false };
  }

  private comment(symbol: ts.Symbol): string {
    return ts.displayPartsToString(symbol.getDocumentationComment(this.checker)).replace(/\s+/g, ' ').trim();
  }
}

/** The compiler gives the members of a union in the order in which it met them, which other files may change. */
function inOrder<T>(values: readonly T[]): T[] {
  return [...values].sort((a, b) => (JSON.stringify(a) < JSON.stringify(b) ? -1 : 1));
}

function isInterface(type: ts.Type): boolean {
  return (
    type.isClassOrInterface() &&
    type.symbol.declarations?.some((one) => ts.isInterfaceDeclaration(one)) === true
  );
}
