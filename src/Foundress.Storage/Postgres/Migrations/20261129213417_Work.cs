using System;
using Microsoft.EntityFrameworkCore.Migrations;
using Npgsql.EntityFrameworkCore.PostgreSQL.Metadata;

#nullable disable

namespace Foundress.Storage.Postgres.Migrations
{
    /// <inheritdoc />
    public partial class Work : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "work",
                columns: table => new
                {
                    number = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    operation = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    apiary = table.Column<Guid>(type: "uuid", nullable: false),
                    input_hash = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    model_version = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    input = table.Column<string>(type: "text", nullable: false),
                    state = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    attempts = table.Column<int>(type: "integer", nullable: false),
                    lease = table.Column<Guid>(type: "uuid", nullable: true),
                    leased_until = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    worker = table.Column<string>(type: "text", nullable: true),
                    result = table.Column<string>(type: "text", nullable: true),
                    trouble = table.Column<string>(type: "text", nullable: true),
                    ended_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_work", x => x.number);
                });

            migrationBuilder.CreateIndex(
                name: "work_key",
                table: "work",
                columns: new[] { "operation", "apiary", "input_hash", "model_version" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "work_open",
                table: "work",
                column: "number",
                filter: "state IN ('waiting', 'leased')");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "work");
        }
    }
}
