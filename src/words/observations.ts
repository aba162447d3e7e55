import type { FangColor, MoltStage, ObservationKind } from '../domain/care/observation.ts';

/** What was seen, as a line of its own: "refused food". */
export const SEEN_LABELS: Readonly<Record<ObservationKind, string>> = {
  refused: 'refused food',
  ate: 'ate',
  drank: 'drank',
  'water-changed': 'water changed',
  'slow-and-hiding': 'slow, hides',
  'abdomen-dark-and-tight': 'abdomen dark, tight and shiny',
  'bald-patch-dark': 'bald patch dark',
  'whole-animal-dark': 'dark all over',
  'climbs-badly': 'climbs smooth walls badly',
  'retreat-closed': 'closed its retreat',
  'mat-laid': 'laid a silk mat',
  'setae-on-mat': 'setae shed over the mat',
  'turned-over': 'turned over',
  'carapace-open': 'carapace open',
  'legs-free': 'legs free',
  'free-of-skin': 'free of its skin',
  'fangs-white': 'fangs white',
  'fangs-red-brown': 'fangs red-brown',
  'fangs-black': 'fangs black',
  'limb-lost': 'lost a limb',
  'span-measured': 'leg span measured',
  mature: 'mature',
  'sperm-web': 'made a sperm web',
  'egg-sac': 'laid an egg sac',
};

export function stageInWords(stage: MoltStage): string {
  return SEEN_LABELS[stage];
}

/** "white", in "fangs white". */
export function fangColorInWords(color: FangColor): string {
  return SEEN_LABELS[color].replace('fangs ', '');
}
