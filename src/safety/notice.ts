/** The one standing notice: said once beside advice, never repeated in each caution. */
export const STANDING_NOTICE =
  "Allergen, diet and safety advice here is general. Local food-safety rules, the label on the package and your doctor, dietitian or certifier come first.";
