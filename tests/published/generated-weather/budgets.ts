/** What each check allows, and what sets it. Printed beside the figures by scripts/validate-weather.ts. */
export const BUDGETS = {
  'daily clearness, month mean':
    '4.5 standard errors of 100 generated years (spread about 0.17, persistence 0.25: 0.004) + 0.003 for tables and clipping',
  'daily clearness, spread':
    '±3 %: sampling 1 %, smoothing over neighbouring months 2 %. Typical years: expected 1.07 × the observed, the stated correction for modelled radiation',
  'daily clearness, lag 1':
    '±0.05: one pooled figure stands for twelve months (0.03), second-order terms of the distribution (0.02)',
  'dark days, share':
    'measured ±0.02 (20 and 4 years: 0.008 and 0.015). Typical years −0.025 … +0.045: a year has 0.02 of sampling, and the corrected spread adds dark days on purpose',
  'classes of days, share':
    '±0.035: shape of the published distribution (0.02), corrected spread in typical years (0.02)',
  'next day the same class':
    '3 standard errors of the observed share, × 1.2 because days are not independent',
  'dark runs, share of dark days in runs':
    'the observed figure lies in the central 99 % of 200 generated series as long as it',
  'longest dark run': 'the same',
  'worst spell of a year, median':
    'the observed median lies in the central 99 % of 60 generated series as long; 0.02 kWh for the floor of the distribution',
  'month means between years, rms':
    'the observed figure lies in the central 99 % of 200 generated series as long',
  'dry-bulb, month mean': '4.5 standard errors of 100 generated years (0.22 of the spread) + 0.1 °C',
  'dry-bulb, spread of day means':
    '±5 %: smoothing over months 3 %, sampling 1 %, cycle running on into the next day 1 %',
  'dry-bulb, lag 1': '±0.07: monthly and whole-year figures of the same file differ by up to 0.06',
  'dry-bulb tied to clearness':
    '±0.1: smoothing over months of ties that change sign with the season (0.06), sampling (0.03)',
  'dry-bulb, daily range': '±0.6 °C: the range of a calendar day takes in part of the change from day to day',
  'hourly clearness, mean': '±0.015 outside the observed places: days lie elsewhere within a class',
  'hourly clearness, 5th percentile': '±0.04 outside the observed places: shape of the truncated normal',
  'hourly clearness, 95th percentile': '±0.035 outside the observed places: the same',
  'hourly clearness, share above 0.7': '±0.06 outside the observed places: the same',
  'hourly clearness, residual spread':
    '±12 % outside the observed places (0.004 at least): fit of nine numbers to 21 places',
  'hourly clearness, residual lag 1': '±0.06 outside the observed places: one persistence for all classes',
  'shape of the day':
    '±0.07 outside the observed places: the published mean is too low at low sun on dull days',
  'minute clearness, spread in the hour':
    '±15 % outside the two stations (0.004 at least): bounds cut the largest swings',
  'minute clearness, median spread': '±0.012 outside the two stations: classes have a width',
  'minute clearness, 90th percentile of spread':
    '±0.01 outside the two stations: bounds cut the largest swings',
  'minute clearness, correlation after 1 min':
    '±0.05 outside the two stations: two lags fitted for all classes',
  'minute clearness, correlation after 5 min': '±0.1 outside the two stations: the same',
  'minute clearness, correlation after 15 min': '±0.06 outside the two stations: the same',
  'minutes below 0.4 of a clear sky': '±0.08 outside the two stations: two levels stand for all clouds',
  'minutes above 0.9 of a clear sky': '±0.08 outside the two stations: the same',
  'energy that hourly means hide':
    '±50 %: share of broken-cloud hours in two generated years, haze of the clear sky',
} as const;

export type Check = keyof typeof BUDGETS;
