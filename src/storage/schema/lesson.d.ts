export declare const lessonTable: import("./column.ts").TableDescription<"lesson">;
