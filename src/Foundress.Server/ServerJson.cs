using System.Text.Json.Serialization;
using Foundress.Server.Endpoints;
using Foundress.Server.Exchange;
using Foundress.Server.Fleet;
using Microsoft.AspNetCore.Mvc;

namespace Foundress.Server;

/// <summary>Source-generated JSON of the server's answers.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(About))]
[JsonSerializable(typeof(ExchangeAnswer))]
[JsonSerializable(typeof(DemoRemoved))]
[JsonSerializable(typeof(BackupList))]
[JsonSerializable(typeof(BackupLine))]
[JsonSerializable(typeof(DueAnswer))]
[JsonSerializable(typeof(ApiariesAnswer))]
[JsonSerializable(typeof(ApiaryAnswer))]
[JsonSerializable(typeof(FleetState))]
[JsonSerializable(typeof(Health))]
[JsonSerializable(typeof(ProblemDetails))]
internal sealed partial class ServerJson : JsonSerializerContext;
