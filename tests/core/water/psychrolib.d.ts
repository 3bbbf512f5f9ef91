declare module 'psychrolib' {
  const psychrolib: {
    SI: number;
    SetUnitSystem(system: number): void;
    GetSatVapPres(celsius: number): number;
    GetStandardAtmPressure(metres: number): number;
    GetVapPresFromRelHum(celsius: number, part: number): number;
  };
  export default psychrolib;
}
