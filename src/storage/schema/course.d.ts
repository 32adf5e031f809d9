export declare const courseTable: import("./column.ts").TableDescription<"course">;
