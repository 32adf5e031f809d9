export declare const segmentTable: import("./column.ts").TableDescription<"segment">;
