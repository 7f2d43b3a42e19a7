/**
 * Observed weather that generated weather is held against. Facts computed from public data, day = local standard time.
 * Sources: NREL TMY3 data sets (2008; one typical year each, radiation modelled); NOAA SURFRAD, Penn State, daily sums
 * 1998–2017 (measured); DTU solar station, Lyngby, Denmark, 2015–2018 and 2024–2025 (measured); NREL SRRL, Golden,
 * Colorado: hours of 2013, minutes of September 2018, January and June 2023 (measured).
 */
import type { MonthlyNormals } from '../../../packages/sim/src/scenario/scenario.ts';

/**
 * Whole-year values: mean daily clearness, spread and lag-1 correlation of its deviations from the month means, share of
 * days below 0.3; mean dry-bulb, spread and lag-1 of the deviations of its daily mean, correlation of the two deviations.
 */
export interface ObservedYear {
  readonly clearness: number;
  readonly sd: number;
  readonly lag1: number;
  readonly dark: number;
  readonly dryBulbC: number;
  readonly dryBulbSdC: number;
  readonly dryBulbLag1: number;
  readonly tie: number;
}

const year = (
  ...[clearness, sd, lag1, dark, dryBulbC, dryBulbSdC, dryBulbLag1, tie]: [
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
  ]
): ObservedYear => ({ clearness, sd, lag1, dark, dryBulbC, dryBulbSdC, dryBulbLag1, tie });

export const OBSERVED_YEARS: Readonly<Record<string, ObservedYear>> = {
  seattle: year(0.45, 0.152, 0.31, 0.249, 11.2, 2.61, 0.72, 0.21),
  buffalo: year(0.472, 0.145, 0.18, 0.162, 9.0, 4.15, 0.63, -0.2),
  burlington: year(0.482, 0.155, 0.21, 0.159, 7.9, 4.65, 0.66, -0.13),
  chicago: year(0.492, 0.152, 0.19, 0.153, 10.0, 5.0, 0.73, -0.05),
  minneapolis: year(0.509, 0.162, 0.18, 0.14, 7.7, 4.98, 0.72, 0.04),
  bondville: year(0.463, 0.171, 0.2, 0.255, 11.1, 5.2, 0.78, -0.05),
  boston: year(0.502, 0.163, 0.18, 0.159, 10.6, 4.15, 0.65, 0.05),
  miami: year(0.53, 0.118, 0.31, 0.058, 24.5, 2.19, 0.63, -0.04),
  houston: year(0.507, 0.148, 0.35, 0.11, 20.4, 3.66, 0.66, -0.2),
  'new-orleans': year(0.506, 0.154, 0.32, 0.129, 20.4, 3.51, 0.66, -0.08),
  'san-juan': year(0.563, 0.1, 0.26, 0.016, 26.6, 0.71, 0.52, 0.47),
  honolulu: year(0.57, 0.099, 0.18, 0.022, 24.9, 0.99, 0.7, 0.15),
  'los-angeles': year(0.586, 0.12, 0.33, 0.055, 16.8, 1.46, 0.7, 0.11),
  phoenix: year(0.671, 0.116, 0.3, 0.025, 23.8, 3.12, 0.83, 0.24),
  'las-vegas': year(0.668, 0.115, 0.19, 0.022, 19.8, 3.13, 0.78, 0.06),
  albuquerque: year(0.649, 0.136, 0.23, 0.036, 13.7, 3.04, 0.72, 0.2),
  denver: year(0.579, 0.156, 0.32, 0.096, 10.9, 4.24, 0.63, 0.39),
  golden: year(0.559, 0.171, 0.24, 0.107, 9.8, 4.87, 0.68, 0.4),
  'salt-lake-city': year(0.565, 0.143, 0.2, 0.093, 11.9, 3.53, 0.61, -0.07),
  boise: year(0.563, 0.155, 0.29, 0.104, 11.2, 3.73, 0.72, -0.01),
  fairbanks: year(0.504, 0.119, 0.34, 0.051, -1.4, 5.37, 0.78, -0.14),
  'lyngby-dtu': year(0.391, 0.173, 0.27, 0.381, 9.6, 2.76, 0.8, 0.09),
  'penn-state': year(0.463, 0.199, 0.25, 0.255, 10.4, 4.67, 0.71, -0.09),
  'state-college': year(0.465, 0.171, 0.16, 0.252, 9.9, 4.7, 0.76, -0.01),
  'desert-rock': year(0.665, 0.121, 0.23, 0.03, 17.7, 3.19, 0.78, 0.05),
};

/** Monthly normals of Lyngby (DTU, 1,453 complete days), 55.79 N 12.53 E: a dark northern winter, outside the table that is shipped. */
export const LYNGBY: MonthlyNormals = {
  clearnessMean: [0.248, 0.332, 0.391, 0.441, 0.537, 0.487, 0.472, 0.463, 0.445, 0.354, 0.3, 0.238],
  clearnessSd: [0.162, 0.187, 0.205, 0.182, 0.169, 0.162, 0.168, 0.156, 0.167, 0.195, 0.171, 0.159],
  clearnessLag1: [0.08, 0.41, 0.4, 0.26, 0.3, 0.37, 0.32, 0.28, 0.21, 0.31, 0.08, 0.08],
  dryBulbMeanC: [1.89, 1.82, 3.95, 7.47, 12.85, 16.02, 17.79, 17.57, 14.92, 10.31, 6.09, 4.96],
  dryBulbDailyRangeC: [3.19, 3.54, 5.17, 6.09, 7.75, 7.05, 7.09, 6.8, 5.83, 3.99, 3.72, 3.22],
  dryBulbSdC: [2.88, 3.12, 2.93, 2.61, 3.67, 2.73, 2.63, 2.07, 2.59, 2.25, 3.19, 2.51],
  dryBulbLag1: [0.76, 0.85, 0.84, 0.78, 0.87, 0.8, 0.81, 0.69, 0.83, 0.79, 0.8, 0.74],
  clearnessDryBulbCorrelation: [-0.28, -0.31, 0.27, 0.14, 0.24, 0.44, 0.51, 0.26, 0.14, 0.13, -0.33, -0.18],
};

/** Shares of days with clearness below 0.3, to 0.5, to 0.65 and above; chance that a dark day follows a dark one, a clear one a clear one. */
export const DAY_CLASSES = {
  typicalYears: [0.108, 0.24, 0.317, 0.335], // TMY3, 23 sites
  'penn-state': [0.255, 0.261, 0.241, 0.243],
  'lyngby-dtu': [0.381, 0.281, 0.218, 0.12],
} as const;
/** With the number of such days. */
export const STAYS_DARK = {
  'penn-state': { share: 0.41, days: 1731 },
  'lyngby-dtu': { share: 0.572, days: 519 },
} as const;
export const STAYS_CLEAR = {
  'penn-state': { share: 0.399, days: 1656 },
  'lyngby-dtu': { share: 0.446, days: 157 },
} as const;

export const RUN_LENGTHS = [2, 3, 4, 5, 7, 10] as const;
/** Share of dark days in runs of at least that many, and the longest run. */
export const DARK_RUNS = {
  'penn-state': { shares: [0.631, 0.376, 0.222, 0.136, 0.062, 0.024], longest: 11, years: 20 },
  'lyngby-dtu': { shares: [0.748, 0.573, 0.451, 0.346, 0.24, 0.106], longest: 17, years: 4 },
} as const;

export const SPELL_DAYS = [1, 3, 5, 7, 10, 14] as const;
/** Penn State, SURFRAD, 18 years: median over the years of the lowest mean GHI (kWh/m² a day) of n days in a row. */
export const WORST_SPELLS = [0.181, 0.397, 0.559, 0.707, 0.87, 0.951] as const;
/** Penn State, SURFRAD: standard deviation between years of the monthly mean clearness, January first. */
export const BETWEEN_YEARS = [
  0.036, 0.048, 0.036, 0.053, 0.051, 0.044, 0.039, 0.027, 0.064, 0.059, 0.043, 0.051,
] as const;

export const DAY_CLASS_EDGES = [0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 1] as const;
/**
 * Hours with the sun above 10°, by class of daily clearness: TMY3 (21 sites), Golden 2013, Lyngby; NaN where too few.
 * sdResidual and lag1: clearness less the mean of its group of daily clearness (0.05) and elevation (10°).
 */
export const HOURS = {
  mean: [
    [NaN, 0.17, 0.255, 0.347, 0.444, 0.538, 0.635, 0.72],
    [NaN, 0.15, 0.254, 0.34, 0.435, 0.549, 0.636, 0.748],
    [0.078, 0.153, 0.253, 0.352, 0.446, 0.543, 0.64, 0.704],
  ],
  p5: [
    [NaN, 0.107, 0.127, 0.157, 0.18, 0.24, 0.388, 0.549],
    [NaN, 0.065, 0.083, 0.12, 0.099, 0.184, 0.282, 0.508],
    [0.039, 0.065, 0.091, 0.116, 0.165, 0.242, 0.383, 0.56],
  ],
  p95: [
    [NaN, 0.269, 0.445, 0.605, 0.699, 0.738, 0.771, 0.808],
    [NaN, 0.273, 0.507, 0.604, 0.781, 0.799, 0.816, 0.843],
    [0.125, 0.282, 0.481, 0.625, 0.688, 0.735, 0.76, 0.782],
  ],
  above07: [
    [NaN, 0.001, 0.001, 0.011, 0.049, 0.127, 0.35, 0.712],
    [NaN, 0, 0.006, 0.024, 0.143, 0.296, 0.492, 0.817],
    [0, 0, 0.002, 0.015, 0.041, 0.128, 0.376, 0.646],
  ],
  sdResidual: [
    [NaN, 0.059, 0.096, 0.128, 0.154, 0.14, 0.098, 0.058],
    [NaN, 0.069, 0.126, 0.141, 0.199, 0.191, 0.164, 0.088],
    [0.028, 0.067, 0.114, 0.151, 0.154, 0.142, 0.091, 0.046],
  ],
  lag1: [
    [NaN, 0.208, 0.308, 0.383, 0.416, 0.437, 0.469, 0.53],
    [NaN, 0.275, 0.498, 0.326, 0.573, 0.513, 0.57, 0.452],
    [0.553, 0.503, 0.544, 0.568, 0.535, 0.564, 0.531, 0.445],
  ],
} as const;

export const ELEVATION_EDGES_DEG = [10, 20, 30, 45, 60, 90] as const;
/** Mean hourly over daily clearness by class of day (from 0.2) and elevation: TMY3, Golden, Lyngby. */
export const DAY_SHAPE = [
  [
    [0.978, 1.021, 1.007, 1.007, 0.991],
    [1.073, 1.063, 1.066, NaN, NaN],
    [0.994, 1.019, 1.009, 1.008, NaN],
  ],
  [
    [0.919, 0.995, 1.023, 1.024, 1.025],
    [0.89, 0.985, 0.918, 1.058, NaN],
    [0.935, 1.017, 1.064, 0.992, NaN],
  ],
  [
    [0.853, 0.963, 1.004, 1.061, 1.062],
    [0.786, 0.911, 0.984, 1.127, 1.021],
    [0.916, 0.974, 1.026, 1.055, NaN],
  ],
  [
    [0.793, 0.936, 1.0, 1.063, 1.097],
    [0.813, 0.938, 1.026, 1.074, 0.987],
    [0.875, 0.965, 1.022, 1.1, NaN],
  ],
  [
    [0.79, 0.941, 1.006, 1.058, 1.092],
    [0.834, 0.948, 0.977, 1.045, 1.122],
    [0.82, 0.945, 1.037, 1.079, NaN],
  ],
  [
    [0.82, 0.941, 1.01, 1.047, 1.065],
    [0.875, 0.981, 1.011, 1.051, 1.066],
    [0.844, 0.948, 1.024, 1.058, NaN],
  ],
] as const;

/** Minutes, by hourly clearness 0–0.1 … 0.8–0.9: Lyngby, Golden. sd: mean over hours of the spread within the hour. */
export const MINUTES = {
  sd: [
    [0.021, 0.043, 0.073, 0.122, 0.178, 0.173, 0.103, 0.053, 0.087],
    [0.028, 0.044, 0.072, 0.107, 0.152, 0.189, 0.141, 0.048, 0.033],
  ],
  p50: [
    [0.017, 0.037, 0.059, 0.109, 0.181, 0.176, 0.08, 0.015, 0.069],
    [0.024, 0.037, 0.048, 0.064, 0.143, 0.203, 0.147, 0.014, 0.007],
  ],
  p90: [
    [0.038, 0.077, 0.14, 0.225, 0.278, 0.282, 0.243, 0.166, 0.166],
    [0.06, 0.087, 0.185, 0.248, 0.264, 0.289, 0.25, 0.15, 0.097],
  ],
  r1: [
    [0.917, 0.905, 0.851, 0.772, 0.719, 0.661, 0.589, 0.511, 0.502],
    [0.939, 0.886, 0.917, 0.897, 0.872, 0.864, 0.821, 0.72, 0.791],
  ],
  r5: [
    [0.576, 0.561, 0.486, 0.368, 0.299, 0.249, 0.147, 0.092, 0.108],
    [0.689, 0.581, 0.601, 0.577, 0.496, 0.514, 0.332, 0.16, 0.458],
  ],
  r15: [
    [-0.007, -0.009, -0.033, -0.071, -0.063, -0.06, -0.061, -0.065, -0.084],
    [0.091, 0.036, -0.009, 0.048, 0.037, -0.006, -0.105, -0.093, -0.203],
  ],
} as const;

/**
 * Share of minutes with a clear-sky index (GHI over Haurwitz's clear sky) below 0.4 and above 0.9, by the hour's index
 * 0.2–0.3 … 0.9–1.0: Lyngby, Golden. Broken cloud has both.
 */
export const CLEAR_SKY_INDEX = {
  below04: [
    [0.952, 0.752, 0.392, 0.242, 0.179, 0.129, 0.058, 0.014],
    [0.947, 0.781, 0.376, 0.189, 0.138, 0.124, 0.074, 0.017],
  ],
  above09: [
    [0, 0.007, 0.033, 0.096, 0.202, 0.332, 0.439, 0.883],
    [0.005, 0.013, 0.039, 0.079, 0.156, 0.312, 0.458, 0.825],
  ],
} as const;

/**
 * What hourly means hide, Lyngby: energy above a constant level, as a share of all, from minutes less from hour means.
 */
export const HIDDEN_SURPLUS = { levelsWm2: [200, 400, 600], shares: [0.015, 0.034, 0.027] } as const;
