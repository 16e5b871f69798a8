export { NOT_BY_SPOON } from "nutrient-core";
