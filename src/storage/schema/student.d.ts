export declare const studentTable: import("./column.ts").TableDescription<"student">;
