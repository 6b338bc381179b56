using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Foundress.Storage.Sqlite.Migrations
{
    /// <inheritdoc />
    public partial class Initial : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            // "Fndr": marks the file as a book of this program (the SQLite file format, offset 68).
            migrationBuilder.Sql("PRAGMA application_id = 0x466E6472;");

            migrationBuilder.CreateTable(
                name: "book",
                columns: table => new
                {
                    key = table.Column<int>(type: "INTEGER", nullable: false),
                    incarnation = table.Column<Guid>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_book", x => x.key);
                });

            migrationBuilder.CreateTable(
                name: "entries",
                columns: table => new
                {
                    sequence = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    operation = table.Column<string>(type: "TEXT", maxLength: 200, nullable: false),
                    id = table.Column<Guid>(type: "TEXT", nullable: false),
                    author = table.Column<string>(type: "TEXT", maxLength: 200, nullable: false),
                    device = table.Column<string>(type: "TEXT", maxLength: 200, nullable: false),
                    clock = table.Column<string>(type: "TEXT", maxLength: 17, nullable: false),
                    kind = table.Column<string>(type: "TEXT", maxLength: 200, nullable: false),
                    schema = table.Column<int>(type: "INTEGER", nullable: false),
                    payload = table.Column<string>(type: "TEXT", maxLength: 65536, nullable: false),
                    received_at = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_entries", x => x.sequence);
                });

            migrationBuilder.CreateIndex(
                name: "entries_operation_id",
                table: "entries",
                columns: new[] { "operation", "id" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "entries_operation_sequence",
                table: "entries",
                columns: new[] { "operation", "sequence" });
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "book");

            migrationBuilder.DropTable(
                name: "entries");
        }
    }
}
