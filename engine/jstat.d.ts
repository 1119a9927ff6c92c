/** jstat ships no types; these are the functions of it that are used. */
declare module "jstat" {
  const jstat: {
    jStat: {
      normal: {
        cdf(x: number, mean: number, sd: number): number;
        pdf(x: number, mean: number, sd: number): number;
        inv(p: number, mean: number, sd: number): number;
      };
      gamma: {
        cdf(x: number, shape: number, scale: number): number;
        inv(p: number, shape: number, scale: number): number;
      };
      beta: { cdf(x: number, alpha: number, beta: number): number };
    };
  };
  export default jstat;
}
