import type { Stage } from '@loomproof/verify';

/** What must be plugged and unplugged for a stage, as a sentence. */
export function stageWords(stage: Stage, connectorName: (index: number) => string): string {
  switch (stage.is) {
    case 'bench':
      return 'the harness lies on a table: every connector unplugged, no stud on metal, the rings of one stud held together';
    case 'unplugged':
      return 'on the machine: every source off, every connector on a wire that is read unplugged, at both ends of the wire';
    case 'in place': {
      const pulled = [...stage.pulled].map(connectorName);
      return `on the machine: every source off, plugged as the work leaves it${pulled.length === 0 ? '' : `, but ${pulled.join(', ')} unplugged`}`;
    }
  }
}
