import type { Candidate } from './candidate.ts';
import { kitNets, kitNetsAgain, proof, proofInProportion } from './kit-candidates.ts';
import { bareUnions, graphlibNets, graphologyNets, ownNets, ownUnions } from './net-candidates.ts';

/** Everything that is measured, by name. */
export const candidates: ReadonlyMap<string, (size: number) => Candidate> = new Map([
  ['nets', ownNets],
  ['nets by graphlib', graphlibNets],
  ['nets by graphology', graphologyNets],
  ['unions', ownUnions],
  ['bare unions', bareUnions],
  ['nets of the kit', kitNets],
  ['nets of the kit again', kitNetsAgain],
  ['proof', proof],
  ['proof in proportion', proofInProportion],
]);
