using System;
using Microsoft.EntityFrameworkCore.Migrations;
using Npgsql.EntityFrameworkCore.PostgreSQL.Metadata;

#nullable disable

namespace Foundress.Accounts.Postgres.Migrations
{
    /// <inheritdoc />
    public partial class Initial : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.EnsureSchema(
                name: "foundress_accounts");

            migrationBuilder.CreateTable(
                name: "AspNetUsers",
                schema: "foundress_accounts",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    IsAdministrator = table.Column<bool>(type: "boolean", nullable: false),
                    MadeAt = table.Column<long>(type: "bigint", nullable: false),
                    UserName = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    NormalizedUserName = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    Email = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    NormalizedEmail = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    EmailConfirmed = table.Column<bool>(type: "boolean", nullable: false),
                    PasswordHash = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    SecurityStamp = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    ConcurrencyStamp = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    PhoneNumber = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    PhoneNumberConfirmed = table.Column<bool>(type: "boolean", nullable: false),
                    TwoFactorEnabled = table.Column<bool>(type: "boolean", nullable: false),
                    LockoutEnd = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    LockoutEnabled = table.Column<bool>(type: "boolean", nullable: false),
                    AccessFailedCount = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_AspNetUsers", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "DataProtectionKeys",
                schema: "foundress_accounts",
                columns: table => new
                {
                    Id = table.Column<int>(type: "integer", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    FriendlyName = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    Xml = table.Column<string>(type: "text", nullable: true, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_DataProtectionKeys", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "links",
                schema: "foundress_accounts",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Hash = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Operation = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    Role = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: false),
                    Administrator = table.Column<bool>(type: "boolean", nullable: false),
                    ForName = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    PersonId = table.Column<Guid>(type: "uuid", nullable: true),
                    MadeBy = table.Column<Guid>(type: "uuid", nullable: true),
                    MadeAt = table.Column<long>(type: "bigint", nullable: false),
                    ExpiresAt = table.Column<long>(type: "bigint", nullable: false),
                    UsedAt = table.Column<long>(type: "bigint", nullable: true),
                    UsedBy = table.Column<Guid>(type: "uuid", nullable: true),
                    WithdrawnAt = table.Column<long>(type: "bigint", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_links", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "passed_on",
                schema: "foundress_accounts",
                columns: table => new
                {
                    Operation = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    EntryId = table.Column<Guid>(type: "uuid", nullable: false),
                    PersonId = table.Column<Guid>(type: "uuid", nullable: false),
                    Device = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    At = table.Column<long>(type: "bigint", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_passed_on", x => new { x.Operation, x.EntryId });
                });

            migrationBuilder.CreateTable(
                name: "sign_ins",
                schema: "foundress_accounts",
                columns: table => new
                {
                    Id = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    At = table.Column<long>(type: "bigint", nullable: false),
                    PersonId = table.Column<Guid>(type: "uuid", nullable: true),
                    Way = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: false),
                    Result = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: false),
                    Network = table.Column<string>(type: "text", nullable: false, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_sign_ins", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "AspNetUserClaims",
                schema: "foundress_accounts",
                columns: table => new
                {
                    Id = table.Column<int>(type: "integer", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    UserId = table.Column<Guid>(type: "uuid", nullable: false),
                    ClaimType = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    ClaimValue = table.Column<string>(type: "text", nullable: true, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_AspNetUserClaims", x => x.Id);
                    table.ForeignKey(
                        name: "FK_AspNetUserClaims_AspNetUsers_UserId",
                        column: x => x.UserId,
                        principalSchema: "foundress_accounts",
                        principalTable: "AspNetUsers",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "AspNetUserLogins",
                schema: "foundress_accounts",
                columns: table => new
                {
                    LoginProvider = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    ProviderKey = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    ProviderDisplayName = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    UserId = table.Column<Guid>(type: "uuid", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_AspNetUserLogins", x => new { x.LoginProvider, x.ProviderKey });
                    table.ForeignKey(
                        name: "FK_AspNetUserLogins_AspNetUsers_UserId",
                        column: x => x.UserId,
                        principalSchema: "foundress_accounts",
                        principalTable: "AspNetUsers",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "AspNetUserPasskeys",
                schema: "foundress_accounts",
                columns: table => new
                {
                    CredentialId = table.Column<byte[]>(type: "bytea", maxLength: 1024, nullable: false),
                    UserId = table.Column<Guid>(type: "uuid", nullable: false),
                    Data = table.Column<string>(type: "jsonb", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_AspNetUserPasskeys", x => x.CredentialId);
                    table.ForeignKey(
                        name: "FK_AspNetUserPasskeys_AspNetUsers_UserId",
                        column: x => x.UserId,
                        principalSchema: "foundress_accounts",
                        principalTable: "AspNetUsers",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "AspNetUserTokens",
                schema: "foundress_accounts",
                columns: table => new
                {
                    UserId = table.Column<Guid>(type: "uuid", nullable: false),
                    LoginProvider = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Name = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Value = table.Column<string>(type: "text", nullable: true, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_AspNetUserTokens", x => new { x.UserId, x.LoginProvider, x.Name });
                    table.ForeignKey(
                        name: "FK_AspNetUserTokens_AspNetUsers_UserId",
                        column: x => x.UserId,
                        principalSchema: "foundress_accounts",
                        principalTable: "AspNetUsers",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "devices",
                schema: "foundress_accounts",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    PersonId = table.Column<Guid>(type: "uuid", nullable: false),
                    Name = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Label = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Hash = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    EnrolledAt = table.Column<long>(type: "bigint", nullable: false),
                    SeenAt = table.Column<long>(type: "bigint", nullable: false),
                    RevokedAt = table.Column<long>(type: "bigint", nullable: true),
                    RefusedAt = table.Column<long>(type: "bigint", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_devices", x => x.Id);
                    table.ForeignKey(
                        name: "FK_devices_AspNetUsers_PersonId",
                        column: x => x.PersonId,
                        principalSchema: "foundress_accounts",
                        principalTable: "AspNetUsers",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "memberships",
                schema: "foundress_accounts",
                columns: table => new
                {
                    PersonId = table.Column<Guid>(type: "uuid", nullable: false),
                    Operation = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Role = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: false),
                    Since = table.Column<long>(type: "bigint", nullable: false),
                    EndedAt = table.Column<long>(type: "bigint", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_memberships", x => new { x.PersonId, x.Operation });
                    table.ForeignKey(
                        name: "FK_memberships_AspNetUsers_PersonId",
                        column: x => x.PersonId,
                        principalSchema: "foundress_accounts",
                        principalTable: "AspNetUsers",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateIndex(
                name: "IX_AspNetUserClaims_UserId",
                schema: "foundress_accounts",
                table: "AspNetUserClaims",
                column: "UserId");

            migrationBuilder.CreateIndex(
                name: "IX_AspNetUserLogins_UserId",
                schema: "foundress_accounts",
                table: "AspNetUserLogins",
                column: "UserId");

            migrationBuilder.CreateIndex(
                name: "IX_AspNetUserPasskeys_UserId",
                schema: "foundress_accounts",
                table: "AspNetUserPasskeys",
                column: "UserId");

            migrationBuilder.CreateIndex(
                name: "EmailIndex",
                schema: "foundress_accounts",
                table: "AspNetUsers",
                column: "NormalizedEmail");

            migrationBuilder.CreateIndex(
                name: "UserNameIndex",
                schema: "foundress_accounts",
                table: "AspNetUsers",
                column: "NormalizedUserName",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_devices_Hash",
                schema: "foundress_accounts",
                table: "devices",
                column: "Hash",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_devices_Name",
                schema: "foundress_accounts",
                table: "devices",
                column: "Name");

            migrationBuilder.CreateIndex(
                name: "IX_devices_PersonId",
                schema: "foundress_accounts",
                table: "devices",
                column: "PersonId");

            migrationBuilder.CreateIndex(
                name: "IX_links_Hash",
                schema: "foundress_accounts",
                table: "links",
                column: "Hash",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_links_Operation",
                schema: "foundress_accounts",
                table: "links",
                column: "Operation");

            migrationBuilder.CreateIndex(
                name: "IX_memberships_Operation",
                schema: "foundress_accounts",
                table: "memberships",
                column: "Operation");

            migrationBuilder.CreateIndex(
                name: "IX_sign_ins_At",
                schema: "foundress_accounts",
                table: "sign_ins",
                column: "At");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "AspNetUserClaims",
                schema: "foundress_accounts");

            migrationBuilder.DropTable(
                name: "AspNetUserLogins",
                schema: "foundress_accounts");

            migrationBuilder.DropTable(
                name: "AspNetUserPasskeys",
                schema: "foundress_accounts");

            migrationBuilder.DropTable(
                name: "AspNetUserTokens",
                schema: "foundress_accounts");

            migrationBuilder.DropTable(
                name: "DataProtectionKeys",
                schema: "foundress_accounts");

            migrationBuilder.DropTable(
                name: "devices",
                schema: "foundress_accounts");

            migrationBuilder.DropTable(
                name: "links",
                schema: "foundress_accounts");

            migrationBuilder.DropTable(
                name: "memberships",
                schema: "foundress_accounts");

            migrationBuilder.DropTable(
                name: "passed_on",
                schema: "foundress_accounts");

            migrationBuilder.DropTable(
                name: "sign_ins",
                schema: "foundress_accounts");

            migrationBuilder.DropTable(
                name: "AspNetUsers",
                schema: "foundress_accounts");
        }
    }
}
