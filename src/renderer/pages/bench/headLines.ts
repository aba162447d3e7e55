import type { BenchSheet } from '../../../api/contract/bench.ts';
import { dayInWords } from '../../../words/dates.ts';
import { endedInWords } from '../../../words/instars.ts';
import type { Pass } from './pass.ts';
import { passInWords } from './passes/passInWords.ts';

/** What the photo shows and of which instar: never the animal as it is now, unless it is the animal. */
export function instarInWords({ photo, specimen, instar }: BenchSheet): string {
  switch (photo.subject.kind) {
    case 'animal':
      return 'This photo shows the living animal, on the day it was taken.';
    case 'skin':
      return instar === null
        ? 'This skin shows the instar that ended with its molt; the animal has been larger ever since.'
        : `This skin shows ${endedInWords(instar)}; ${specimen === null ? 'the animal' : (specimen.name ?? specimen.code)} has been larger ever since.`;
    case 'none':
      return 'This photo belongs to no animal yet. It can be measured all the same.';
  }
}

export function photoInWords({ photo, specimen }: BenchSheet): string {
  const whose = specimen === null ? photo.originalName : `${photo.originalName}, ${specimen.code}`;
  return `Photo ${whose}`;
}

/** The lines above a copied reading. */
export function headLinesOf(sheet: BenchSheet, pass: Pass): string[] {
  const { photo, specimen } = sheet;
  const animal = specimen === null ? [] : [[specimen.code, specimen.taxon, specimen.name].filter(Boolean).join(', ')];
  const taken = photo.takenOn === null ? '' : `, ${dayInWords(photo.takenOn)}`;
  return [...animal, `${photo.originalName}${taken}`, instarInWords(sheet), passInWords(pass.pass, pass.observer)];
}
