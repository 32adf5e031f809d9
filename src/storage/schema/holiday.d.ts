export declare const holidayTable: import("./column.ts").TableDescription<"holiday">;
