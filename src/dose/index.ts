export { AXES, AT, WIDTH, type Axis } from "./axes.js";
export { densityOf, dose, doseMatrix, SALT_PER_SODIUM_MG } from "./columns.js";
export { carrierAmount, carrierDose, carrierOf, referenceDish } from "./carrier.js";
export { NOTICEABLE, perceived, TASTES, umami, type Taste } from "./strength.js";
