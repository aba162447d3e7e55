interface PublishedSeries {
  readonly what: string;
  readonly firstInstar: number;
  readonly lengthsMm: readonly number[];
  readonly expected: {
    readonly geometricMeanRatio: string;
    readonly ratio: string;
    /** Left out where the calculation apart gives exp(b) alone. */
    readonly intercept?: string;
    readonly slope?: string;
    readonly rSquared: string;
    readonly residualStandardDeviation?: string;
  };
}

/**
 * Sizes by instar as published, taken from the Add-my-Pet collection (Cydia: from the paper's abstract). The papers print
 * sizes, not fits: the expected figures were worked out from those sizes in a calculation apart from this project, with the
 * digits printed here.
 */
export const publishedSeries: readonly PublishedSeries[] = [
  {
    // Moreira VSS, Del-Claro K (2011) Zoologia 28(5):565-570, doi:10.1590/S1984-46702011000500003.
    what: 'Aglaoctenus lagotis, instars 1 to 11',
    firstInstar: 1,
    lengthsMm: [0.62, 0.97, 1.35, 1.76, 2.0, 2.47, 3.02, 3.47, 3.82, 4.43, 5.54],
    expected: {
      geometricMeanRatio: '1.2448',
      ratio: '1.2205',
      intercept: '-0.39138',
      slope: '0.19923',
      rSquared: '0.96217',
      residualStandardDeviation: '0.1381',
    },
  },
  {
    what: 'Aglaoctenus lagotis, instars 1 to 12',
    firstInstar: 1,
    lengthsMm: [0.62, 0.97, 1.35, 1.76, 2.0, 2.47, 3.02, 3.47, 3.82, 4.43, 5.54, 7.4],
    expected: { geometricMeanRatio: '1.2528', ratio: '1.2206', intercept: '-0.39172', slope: '0.19931', rSquared: '0.97067' },
  },
  {
    // Francke OF, Jones SK (1982) J. Arachnol. 10:223-239.
    what: 'Centruroides gracilis, females, instars 1 to 7',
    firstInstar: 1,
    lengthsMm: [1.6, 2.25, 2.96, 3.93, 5.21, 6.65, 8.16],
    expected: {
      geometricMeanRatio: '1.3120',
      ratio: '1.3128',
      intercept: '0.25125',
      slope: '0.27216',
      rSquared: '0.99564',
      residualStandardDeviation: '0.0426',
    },
  },
  {
    what: 'Centruroides gracilis, females, instars 2 to 7',
    firstInstar: 2,
    lengthsMm: [2.25, 2.96, 3.93, 5.21, 6.65, 8.16],
    expected: { geometricMeanRatio: '1.2939', ratio: '1.2989', intercept: '0.30821', slope: '0.26148', rSquared: '0.99687' },
  },
  {
    what: 'Centruroides gracilis, large males, instars 1 to 7',
    firstInstar: 1,
    lengthsMm: [1.6, 2.25, 3.01, 3.98, 5.26, 6.85, 8.34],
    expected: { geometricMeanRatio: '1.3168', ratio: '1.3183', intercept: '0.24737', slope: '0.27636', rSquared: '0.99559' },
  },
  {
    what: 'Centruroides gracilis, large males, instars 2 to 7',
    firstInstar: 2,
    lengthsMm: [2.25, 3.01, 3.98, 5.26, 6.85, 8.34],
    expected: { geometricMeanRatio: '1.2996', ratio: '1.3042', intercept: '0.30468', slope: '0.26561', rSquared: '0.99670' },
  },
  {
    // Lourenco WR, Goodman SM (2006) Zool. Anz. 244:181-185.
    what: 'Grosphus hirtus, females',
    firstInstar: 1,
    lengthsMm: [1.5, 2.0, 2.6, 3.3, 4.3, 6.1],
    expected: { geometricMeanRatio: '1.3239', ratio: '1.3137', intercept: '0.13093', slope: '0.27283', rSquared: '0.99688' },
  },
  {
    what: 'Grosphus hirtus, males',
    firstInstar: 1,
    lengthsMm: [1.4, 2.0, 2.5, 3.2, 3.7, 4.6],
    expected: { geometricMeanRatio: '1.2686', ratio: '1.2583', intercept: '0.18654', slope: '0.22972', rSquared: '0.98318' },
  },
  {
    // Montezano DG et al. (2019) J. Agric. Sci. 11(8).
    what: 'Spodoptera frugiperda, females',
    firstInstar: 1,
    lengthsMm: [0.35, 0.57, 0.87, 1.29, 1.89, 2.8],
    expected: { geometricMeanRatio: '1.5157', ratio: '1.5084', intercept: '-1.41045', slope: '0.41106', rSquared: '0.99802' },
  },
  {
    what: 'Spodoptera frugiperda, females, as if the third instar had not been there',
    firstInstar: 1,
    lengthsMm: [0.35, 0.57, 1.29, 1.89, 2.8],
    expected: { geometricMeanRatio: '1.6818', ratio: '1.7087', rSquared: '0.97991' },
  },
  {
    // Great Lakes Entomologist 20(3), article 8 (abstract).
    what: 'Cydia pomonella',
    firstInstar: 1,
    lengthsMm: [0.33, 0.5, 0.82, 1.18, 1.55],
    expected: { geometricMeanRatio: '1.4722', ratio: '1.4848', intercept: '-1.46505', slope: '0.39525', rSquared: '0.98976' },
  },
  {
    // Nava DE et al. (2007) J. Appl. Entomol. 131:709-715, doi:10.1111/j.1439-0418.2007.01230.x: a poor fit.
    what: 'Diaphorina citri',
    firstInstar: 1,
    lengthsMm: [0.12, 0.18, 0.35, 0.44, 0.57],
    expected: { geometricMeanRatio: '1.4763', ratio: '1.4933', intercept: '-2.45663', slope: '0.40101', rSquared: '0.96256' },
  },
];
