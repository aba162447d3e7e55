import type { LiveFinding, LiveSignDraft } from '../../../../domain/sexing/live/liveSign.ts';
import type { ReadForm } from '../../../forms/readForm.ts';
import { decimalFrom } from '../../../forms/reading.ts';

type Kind = LiveFinding['kind'];

/** What the dialog holds: fields of all kinds, of which only those of the chosen kind are asked. */
export interface LiveSignForm {
  readonly kind: Kind;
  readonly seen: 'yes' | 'no';
  /** '' where the molt that brought the bulbs is not on record. */
  readonly ultimateMoltId: string;
  readonly fertile: 'yes' | 'no' | 'not-known';
  readonly legSpan: string;
  readonly from: 'ventral' | 'color' | 'build' | 'seller';
  readonly towards: 'female' | 'male';
  readonly seenOn: string;
  readonly observer: string;
  readonly photoIds: readonly string[];
  readonly notes: string;
}

const LARGEST_SPAN_MM = 500;

export function blankSign(today: string, observer: string): LiveSignForm {
  return {
    ...{ kind: 'palpal-bulbs', seen: 'yes', ultimateMoltId: '', fertile: 'not-known', legSpan: '', from: 'ventral', towards: 'female' },
    ...{ seenOn: today, observer, photoIds: [], notes: '' },
  };
}

/** The draft, or what does not fit, by the name of the field. */
export function readSign(form: LiveSignForm): ReadForm<LiveSignDraft> {
  const span = decimalFrom(form.legSpan);
  const spanFits = form.legSpan.trim() === '' || (span > 0 && span <= LARGEST_SPAN_MM);
  const errors = {
    ...(form.seenOn === '' && { seenOn: 'Give the day on which it was seen.' }),
    ...(form.observer.trim() === '' && { observer: 'Say who saw it.' }),
    ...(form.kind === 'ventral-fusillae' && !spanFits && { legSpan: `A length in millimeters, above 0 and up to ${LARGEST_SPAN_MM}.` }),
  };
  if (Object.keys(errors).length > 0) return { draft: null, errors };
  const { seenOn, observer, photoIds, notes } = form;
  return { draft: { finding: findingFrom(form), seenOn, observer: observer.trim(), photoIds: [...photoIds], notes }, errors: null };
}

function findingFrom(form: LiveSignForm): LiveFinding {
  const seen = form.seen === 'yes';
  switch (form.kind) {
    case 'palpal-bulbs':
      return { kind: form.kind, seen, ultimateMoltId: seen && form.ultimateMoltId !== '' ? form.ultimateMoltId : null };
    case 'tibial-hooks':
      return { kind: form.kind, seen };
    case 'sperm-web':
      return { kind: form.kind };
    case 'egg-sac':
      return { kind: form.kind, fertile: form.fertile };
    case 'ventral-fusillae':
      return { kind: form.kind, seen, legSpanMm: form.legSpan.trim() === '' ? null : decimalFrom(form.legSpan) };
    case 'impression':
      return { kind: form.kind, from: form.from, towards: form.towards };
  }
}
