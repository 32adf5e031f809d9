// demo: an invented studio, half-way through a term, made by the same commands a teacher's clicks send.

export { createDemo, type DemoOptions } from './create-demo.ts';
