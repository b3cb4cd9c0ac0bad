import { type Sourced, sources } from './sourced.ts';

export interface TrendRow extends Sourced {
  readonly name: string;
  readonly times: readonly number[];
  readonly values: readonly number[];
  readonly slope: number;
  /** 95 %, ranks interpolated. */
  readonly low: number;
  readonly high: number;
  readonly intercept: number;
  readonly score: number;
  readonly variance: number;
  readonly z: number;
  /** Two-sided, normal approximation with continuity correction. */
  readonly p: number;
}

export const trendRows: readonly TrendRow[] = [
  {
    name: 'sulfate in groundwater',
    times: [89.6, 89.8, 90.1, 90.3, 90.6, 90.8, 91.1, 91.3, 91.6, 91.8, 92.1, 92.6, 93.1, 93.6, 94.1, 94.6, 95.1, 95.6, 95.8, 96.1, 96.3, 96.6, 96.8],
    values: [480, 450, 490, 520, 485, 510, 510, 530, 510, 560, 560, 540, 590, 550, 600, 700, 570, 610, 650, 620, 830, 720, 590],
    slope: 26.666666666666668, low: 20.0, high: 35.71182403049809, intercept: -1909.3333333333335,
    score: 194.0, variance: 1428.0, z: 5.107321596840894, p: 3.267573570717951e-07,
    source: sources.epa, flag: 'seen',
  },
  {
    name: 'sodium in groundwater',
    times: [89.6, 90.1, 90.8, 91.1, 92.1, 93.1, 94.1, 95.6, 96.1, 96.3],
    values: [56, 53, 51, 55, 52, 60, 62, 59, 61, 63],
    slope: 1.3333333333333333, low: 0.39920827185366403, high: 2.3333333333333335, intercept: -65.96666666666665,
    score: 25.0, variance: 125.0, z: 2.146625258399798, p: 0.03182312738649017,
    source: sources.epa, flag: 'seen',
  },
  {
    name: 'annual flow of the Nile, 1871 to 1970',
    times: [1871, 1872, 1873, 1874, 1875, 1876, 1877, 1878, 1879, 1880, 1881, 1882, 1883, 1884, 1885, 1886, 1887, 1888, 1889, 1890, 1891, 1892, 1893, 1894, 1895, 1896, 1897, 1898, 1899, 1900, 1901, 1902, 1903, 1904, 1905, 1906, 1907, 1908, 1909, 1910, 1911, 1912, 1913, 1914, 1915, 1916, 1917, 1918, 1919, 1920, 1921, 1922, 1923, 1924, 1925, 1926, 1927, 1928, 1929, 1930, 1931, 1932, 1933, 1934, 1935, 1936, 1937, 1938, 1939, 1940, 1941, 1942, 1943, 1944, 1945, 1946, 1947, 1948, 1949, 1950, 1951, 1952, 1953, 1954, 1955, 1956, 1957, 1958, 1959, 1960, 1961, 1962, 1963, 1964, 1965, 1966, 1967, 1968, 1969, 1970],
    values: [1120, 1160, 963, 1210, 1160, 1160, 813, 1230, 1370, 1140, 995, 935, 1110, 994, 1020, 960, 1180, 799, 958, 1140, 1100, 1210, 1150, 1250, 1260, 1220, 1030, 1100, 774, 840, 874, 694, 940, 833, 701, 916, 692, 1020, 1050, 969, 831, 726, 456, 824, 702, 1120, 1100, 832, 764, 821, 768, 845, 864, 862, 698, 845, 744, 796, 1040, 759, 781, 865, 845, 944, 984, 897, 822, 1010, 771, 676, 649, 846, 812, 742, 801, 1040, 860, 874, 848, 890, 744, 749, 838, 1050, 918, 986, 797, 923, 975, 815, 1020, 906, 901, 1170, 912, 746, 919, 718, 714, 740],
    slope: -2.6, low: -3.6279264778448708, high: -1.4284443759457544, intercept: 5886.8,
    score: -1387, variance: 112728.33333333333, z: -4.128066522844101, p: 3.658262921664327e-05,
    source: 'R data set Nile (Cobb 1978, Biometrika 65); answer by an independent computation with numpy', flag: 'calc',
  },
  {
    name: 'annual sediment load, data set maxau of the R package trend',
    times: [1965, 1966, 1967, 1968, 1969, 1970, 1971, 1972, 1973, 1974, 1975, 1976, 1977, 1978, 1979, 1980, 1981, 1982, 1983, 1984, 1985, 1986, 1987, 1988, 1989, 1990, 1991, 1992, 1993, 1994, 1995, 1996, 1997, 1998, 1999, 2000, 2001, 2002, 2003, 2004, 2005, 2006, 2007, 2008, 2009],
    values: [37.3836, 31.2822, 26.4192, 28.8279, 32.8822, 37.5726, 27.3425, 29.8579, 35.4932, 28.9041, 25.6932, 16.9699, 28.9014, 20.2521, 19.2685, 19.1913, 24.337, 28.811, 17.6959, 19.6366, 20.9562, 29.1041, 27.3452, 27.6038, 20.989, 26.9699, 27.4438, 32.7923, 27.5616, 30.7288, 33.1452, 25.7787, 25.2877, 24.4082, 28.3836, 17.9727, 16.0959, 17.2685, 11.8904, 13.7705, 21.469, 23.0986, 16.4441, 15.7732, 13.8736],
    slope: -0.2876133413461539, low: -0.41968943128810476, high: -0.15170715940689145, intercept: 597.2664092548077,
    score: -394.0, variance: 10450.0, z: -3.844451666029915, p: 0.00012082229500252835,
    source: 'R package trend, data set maxau; answer by an independent computation with numpy', flag: 'calc',
  },
];

/** Figures printed by the publication itself. */
export const publishedSulfate = { tau: 0.7667984, slope: 26.6666667, intercept: -1909.3333, z: 5.107322, p: 3.267574e-7, low: 20, source: sources.epa, flag: 'seen' } as const;
/** Kendall's table: two-sided chance of |S| at least this, untied. 25 of 10 points is 0.014 a side there. */
export const exactRows = [
  { count: 3, score: 3, p: 2 / 6, source: sources.maths, flag: 'calc' },
  { count: 4, score: 6, p: 2 / 24, source: sources.maths, flag: 'calc' },
  { count: 4, score: 4, p: 2 * 0.167, source: 'Kendall, Rank Correlation Methods, table of S (Gilbert 1987, table A18)', flag: 'memory' },
  { count: 5, score: 8, p: 2 * 0.042, source: 'Kendall, Rank Correlation Methods, table of S (Gilbert 1987, table A18)', flag: 'memory' },
  { count: 10, score: 25, p: 2 * 0.014, source: 'Kendall, Rank Correlation Methods, table of S (Gilbert 1987, table A18)', flag: 'memory' },
] as const satisfies readonly (Sourced & Record<string, unknown>)[];
