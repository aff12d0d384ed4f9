/** Rows that a function yet to be written will answer, each with which. */
export const WAITING: Readonly<Record<string, string>> = {
  'rate-ascent': 'the limit of a lesson: the ascent mark compares a dive with 9 m/min',
  'rate-descent': 'the limit of a lesson: the descent mark compares a dive with 23 m/min',
};

const compressible = 'compressibility of water is left out';
const gravity = 'gravity is a value of the setup, it is not computed from latitude';
const planning = 'the tool plans no dive and computes no gas supply';
const gasHeat = 'gas in cylinders has the constant temperature of the water';
const otherFit = 'the model uses the fit from density; this one from pressure is not in it';
const enriched =
  'enriched air is compressed like air of the same molar density: Z comes out 0.011 high at 232 bar and 0.015 at 300 bar, beyond the row';
const otherSpirometry = 'an older set of reference equations that is not used';
const prone = 'only vertical motion is modelled, swimming drag is not';
const spheroid = 'added mass is a share that the setup gives, not computed from a body’s shape';
const injury = 'the model states over-pressure and no probability of injury';

/** Rows that the model leaves out on purpose, each with why. */
export const OUTSIDE: Readonly<Record<string, string>> = {
  'eos80-rho-4': compressible,
  'eos80-rho-6': compressible,
  'eos80-K-1': compressible,
  'eos80-K-3': compressible,
  'eos80-K-4': compressible,
  'eos80-depth': compressible,
  'grav-0': gravity,
  'grav-45': gravity,
  'grav-60': gravity,
  'usn-fsw': 'a unit of pressure by convention; the model has none of its own',
  'fitp-50': otherFit,
  'fitp-232': otherFit,
  'fitp-300': otherFit,
  'ean32-232': enriched,
  'ean32-300': enriched,
  'cyl-Al-63-532':
    'the printed pair of pulls contradicts the printed size: 63 cubic feet of air weigh 4.8 lb, the model says 4.6 lb, the pair 3.8 lb',
  'usn-ex1': planning,
  'usn-ex2a': planning,
  'usn-ex2b': planning,
  'usn-ex2c': planning,
  'usn-ex2d': planning,
  'usn-ex2e': planning,
  'usn-ex3a': planning,
  'usn-ex3b': planning,
  'usn-ex3c': planning,
  'buzz-sac': `${planning}; the row holds for ideal gas, the cylinder is real`,
  'usn-flask': gasHeat,
  'noaa-cyl': gasHeat,
  'age-depth': injury,
  'dog-65': injury,
  'ecsc-m30-TLC': otherSpirometry,
  'ecsc-m30-FRC': otherSpirometry,
  'ecsc-m30-IVC': otherSpirometry,
  'ecsc-f30-RV': otherSpirometry,
  'ecsc-f30-FRC': otherSpirometry,
  'imm-FVC':
    'of the volumes that immersion changes, total and residual are modelled; vital capacity only follows from them',
  'imm-IC': 'the end-expiratory volume under water is common practice in the model, so inspiratory capacity is too',
  mosteller: 'body surface is by Du Bois',
  brozek: 'body density is by Siri',
  'am-1.5': spheroid,
  'am-2.99': spheroid,
  'am-3.99': spheroid,
  'am-6.01': spheroid,
  'am-9.97': spheroid,
  'drag-1': prone,
  'drag-3': prone,
  'drag-4': prone,
  'drag-slope': prone,
  'fin-vo2': 'no metabolism is modelled',
  'foam-R-57psi': 'no heat is modelled; the row bounds the default gas fraction',
};
