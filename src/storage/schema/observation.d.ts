export declare const observationTable: import("./column.ts").TableDescription<"observation">;
