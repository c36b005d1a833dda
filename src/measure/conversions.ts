// Exact conversions between customary and SI units: international yard and pound agreement (1959), as tabulated
// in NIST SP 811, Appendix B. Standard gravity is 9.80665 m/s2.

/** Kilograms in a pound. */
export const KG_PER_LB = 0.45359237;
/** Newtons in a pound-force. */
export const N_PER_LBF = 4.4482216152605;
/** Newtons that hold a kilogram. */
export const N_PER_KG = 9.80665;
/** Megapascals in a pound-force per square inch. */
export const MPA_PER_PSI = 0.006894757293168;
/** Megapascals in a pound-force per square foot. */
export const MPA_PER_PSF = MPA_PER_PSI / 144;
/** Litres in a US gallon. */
export const L_PER_US_GALLON = 3.785411784;
/** Millimetres in an inch. */
export const MM_PER_INCH = 25.4;
