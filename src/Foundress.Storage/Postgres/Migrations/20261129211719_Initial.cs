using System;
using Microsoft.EntityFrameworkCore.Migrations;
using Npgsql.EntityFrameworkCore.PostgreSQL.Metadata;

#nullable disable

namespace Foundress.Storage.Postgres.Migrations
{
    /// <inheritdoc />
    public partial class Initial : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "book",
                columns: table => new
                {
                    key = table.Column<int>(type: "integer", nullable: false),
                    incarnation = table.Column<Guid>(type: "uuid", nullable: false),
                    place = table.Column<string>(type: "text", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_book", x => x.key);
                });

            migrationBuilder.CreateTable(
                name: "entries",
                columns: table => new
                {
                    sequence = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    operation = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    author = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    device = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    clock = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    kind = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    schema = table.Column<int>(type: "integer", nullable: false),
                    payload = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    received_at = table.Column<long>(type: "bigint", nullable: false)
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
