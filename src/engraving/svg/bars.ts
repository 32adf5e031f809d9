/** Each bar of a drawing, with all that stands behind it until the next one. */
export const bars =
  /<g id="[^"]*" class="measure"[^>]*>[\s\S]*?(?=<g id="[^"]*" class="measure"|<g class="system"|$)/g;
