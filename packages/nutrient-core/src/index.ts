/**
 * Plant-feed, potting-mix and season arithmetic for growers: the library's one door.
 * (The expression reader has a second one, `nutrient-core/expression`, because it brings mathjs with it.)
 */
export { type BedAmount, type BedInput, type BedResult, bed } from "./bed/bed.ts";
export { type BedRequest, readBed } from "./bed/read-bed.ts";
export { blend } from "./blend/blend.ts";
export type { BlendInput, BlendPurpose, BlendTarget, Limit, UseLimit } from "./blend/blend-input.ts";
export type {
  BlendAmount,
  BlendCertificate,
  BlendResult,
  Residual,
  WeighedAmount,
  WeighedBlend,
} from "./blend/blend-result.ts";
export { checkBlendCertificate } from "./blend/check-blend.ts";
export { type BlendRequest, readBlend } from "./blend/read-blend.ts";
export { type DoseAmount, type DoseInput, type DoseResult, dose } from "./dose/dose.ts";
export { type DoseRequest, readDose } from "./dose/read-dose.ts";
export { addContents, asElement, asOxide, type Content, percentOf } from "./element/content.ts";
export { type AtomCounts, massFractions, molarMass, readFormula } from "./element/formula.ts";
export {
  type ContentForm,
  elementPerForm,
  formNamed,
  NUTRIENT_ELEMENTS,
  type Nutrient,
  nutrientOf,
} from "./element/nutrient.ts";
export { label } from "./label/label.ts";
export type { HeldMass, LabelInput, LabelPercent, LabelResult } from "./label/label-result.ts";
export { type LabelRequest, readLabelRequest } from "./label/read-label-request.ts";
export type { Amendment } from "./lime/amendment.ts";
export { lime } from "./lime/lime.ts";
export type { LimeAmount, LimeApplication, LimeInput, LimeResult } from "./lime/lime-input.ts";
export { type LimeRequest, readLime } from "./lime/read-lime.ts";
export type { Soil } from "./lime/read-soil.ts";
export type { SoilTest, TestMethod } from "./lime/soil-test.ts";
export type { Texture } from "./lime/texture.ts";
export type { AirAndWater } from "./mix/air-and-water.ts";
export type { Fill } from "./mix/fill/fill.ts";
export { type FirstSeason, mixFirstSeason } from "./mix/first-season.ts";
export { type IngredientSupply, readShelfIngredients } from "./mix/ingredient/supply.ts";
export { mix } from "./mix/mix.ts";
export type { MixInput } from "./mix/mix-input.ts";
export type { MixAddition, MixComponent, MixResult, OrderedPack } from "./mix/mix-result.ts";
export { type MixRequest, readMix } from "./mix/read-mix.ts";
export { STARTING_POINTS, type StartingPoint } from "./mix/recipe/starting-points.ts";
export type { Section, SectionPoint } from "./mix/shape/section.ts";
export type { Caution, Severity } from "./outcome/caution.ts";
export { type Answer, answer, type Outcome, type Unusable, unusable } from "./outcome/outcome.ts";
export type { Problem } from "./outcome/problem.ts";
export type { WorkingLine } from "./outcome/working.ts";
export type { Material, MaterialGroup } from "./product/materials/material.ts";
export { MATERIALS } from "./product/materials.ts";
export { NOT_BY_SPOON } from "./product/not-by-spoon.ts";
export { type Composition, fractionOf, type Hazard, type Product } from "./product/product.ts";
export { readProduct } from "./product/read-product.ts";
export { EMPTY_SHELF, readShelf, type Shelf } from "./product/shelf.ts";
export { type Presented, present, presentIn, presentRange, presentWater, type UnitHabit } from "./quantity/present.ts";
export { isPlainQuantity, type Quantity, type QuantityReader, readPlainQuantity } from "./quantity/quantity.ts";
export { addDays, type CivilDate, dateOfDay, dayNumber, daysBetween, readCivilDate } from "./season/civil-date.ts";
export { compareProgrammes, type ProgrammeComparison } from "./season/compare.ts";
export type { CropFacts, Expectation, Milestone } from "./season/crop.ts";
export {
  type DailyTemperature,
  type DegreeDayMethod,
  degreeDays,
  type Thresholds,
} from "./season/degree-days.ts";
export { type SeasonDocument, type SeasonFiles, seasonFiles } from "./season/document/document.ts";
export { readSeason, type SeasonContext } from "./season/document/read-season.ts";
export { feedsMeant, givenAsPlanned } from "./season/fed.ts";
export { fedOtherwise } from "./season/fed-otherwise.ts";
export {
  effectiveEntries,
  type FedEntry,
  type HarvestedEntry,
  type LogEntry,
  type ObservedEntry,
  type RainedOutEntry,
  type UndoneEntry,
} from "./season/log.ts";
export { planSeason } from "./season/plan.ts";
export { plantingLabel } from "./season/planting-label.ts";
export type { Condition, Evidence, Programme, Stage, StageTarget } from "./season/programme.ts";
export { PROGRAMMES, programmeNamed } from "./season/programmes/programmes.ts";
export { readLogEntry } from "./season/read-log.ts";
export type { Ceiling, MixOffset, Place, Planting, SeasonInput } from "./season/season.ts";
export type {
  BudgetPoint,
  CeilingOutlook,
  DateRange,
  EventStatus,
  MilestoneDate,
  NutrientBudget,
  PackLine,
  ProductTotal,
  ProgrammeNote,
  Reminder,
  SeasonAmount,
  SeasonEvent,
  SeasonPlan,
  SeasonTotals,
  ShoppingLine,
  Spread,
  StageSpan,
} from "./season/season-plan.ts";
export { readWeather } from "./season/weather/read-weather.ts";
export type { Gap, WeatherRecord } from "./season/weather/weather.ts";
export { type Background, type Conductivity, electricalConductivity } from "./solution/conductivity.ts";
export { type ChargeBalance, chargeBalance, type Ion, type IonAmounts } from "./solution/ion.ts";
export { conductivityPerGram, ionicStrengthNear } from "./solution/linear-conductivity.ts";
export { type Saturation, saturations } from "./solution/precipitation.ts";
export { type Dissolving, dissolves } from "./solution/solubility.ts";
export { conductivityAt, conductivityAt25 } from "./solution/temperature.ts";
export { type BothForms, inBothForms } from "./supply/both-forms.ts";
export { CAN_SPREAD, type DeliveredRange, type DeliveredRanges, deliveredRanges } from "./supply/range.ts";
export { type FedArea, readArea } from "./supply/read-area.ts";
export type { ReadingContext } from "./supply/reading-context.ts";
export { METRIC_SPOONS, type Spoonful, type SpoonSet, spoonsFor, US_SPOONS } from "./supply/spoons.ts";
export { type Amount, type Delivered, deliver } from "./supply/supply.ts";
export { readTarget, type Target, type Wanted } from "./supply/target.ts";
