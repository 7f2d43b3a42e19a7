/**
 * How many standard errors a two-sided 95 % interval reaches to either side: the 0.975 quantile of the standard
 * normal law. A constant and not a call, so that every engine has the same bits.
 * Source: NIST/SEMATECH e-Handbook of Statistical Methods §1.3.6.7.1 (1.960); further digits by bisection
 * of the error function's series in 60-digit arithmetic.
 */
export const Z_95 = 1.959963984540054;
