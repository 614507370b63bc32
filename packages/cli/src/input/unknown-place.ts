import { type Diagnostic, makeDiagnostic, nearestName } from '@loomproof/netlist';

/** The diagnostic for an address on the command line that the kit does not have. */
export function unknownPlace(address: string, known: readonly string[]): Diagnostic {
  const near = nearestName(address, known);
  return makeDiagnostic({
    code: 'unknown-name',
    message: `no place is called \`${address}\``,
    help: near === null ? 'an address is written CONNECTOR:CAVITY' : `did you mean \`${near}\`?`,
  });
}
