using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Foundress.Accounts.Postgres.Migrations
{
    /// <inheritdoc />
    public partial class CalendarLinks : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "calendar_links",
                schema: "foundress_accounts",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    PersonId = table.Column<Guid>(type: "uuid", nullable: false),
                    Hash = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    MadeAt = table.Column<long>(type: "bigint", nullable: false),
                    SeenAt = table.Column<long>(type: "bigint", nullable: true),
                    RevokedAt = table.Column<long>(type: "bigint", nullable: true),
                    RefusedAt = table.Column<long>(type: "bigint", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_calendar_links", x => x.Id);
                    table.ForeignKey(
                        name: "FK_calendar_links_AspNetUsers_PersonId",
                        column: x => x.PersonId,
                        principalSchema: "foundress_accounts",
                        principalTable: "AspNetUsers",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateIndex(
                name: "IX_calendar_links_Hash",
                schema: "foundress_accounts",
                table: "calendar_links",
                column: "Hash",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_calendar_links_PersonId",
                schema: "foundress_accounts",
                table: "calendar_links",
                column: "PersonId");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "calendar_links",
                schema: "foundress_accounts");
        }
    }
}
