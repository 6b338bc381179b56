using System.Globalization;
using System.Net.Mime;
using Foundress.Book.Journal;
using Microsoft.AspNetCore.OpenApi;
using Microsoft.OpenApi;

namespace Foundress.Server.OpenApi;

/// <summary>The server's own description of its API (OpenAPI 3.1): the addresses from the code, their meaning from <see cref="ApiNotes"/>.</summary>
internal sealed class ApiDocument : IOpenApiDocumentTransformer
{
    /// <summary>The version of the API, which the addresses carry. Within it, only what old callers can pass over is added.</summary>
    public const string Version = "1";

    private const string ProblemType = "application/problem+json";

    public static void Add(IServiceCollection services) => services.AddOpenApi("v1", options =>
    {
        options.OpenApiVersion = OpenApiSpecVersion.OpenApi3_1;
        options.AddDocumentTransformer<ApiDocument>();
    });

    public Task TransformAsync(OpenApiDocument document, OpenApiDocumentTransformerContext context, CancellationToken cancellationToken)
    {
        document.Info = new OpenApiInfo
        {
            Title = "Foundress",
            Version = Version,
            Description = "The book of a beekeeping operation: an exchange of immutable entries, and the book for other programs. Errors have the form of RFC 9457 with a detail for the reader. Every address may also answer 421 when it is asked for under a name that is not the server's own.",
            License = new OpenApiLicense { Name = "MIT", Identifier = "MIT" },
        };
        document.Servers = [new OpenApiServer { Url = "/" }];
        document.Tags = new HashSet<OpenApiTag>(new[] { ApiNotes.Exchange, ApiNotes.Reading, ApiNotes.Keeping, ApiNotes.People }.Select(name => new OpenApiTag { Name = name }));
        document.AddComponent("Entry", EntryShape());
        document.AddComponent("Problem", Shape(("title", Text("What kind of trouble it is.")), ("status", Number("The HTTP status.")), ("detail", Text("What happened and what to do."))));
        foreach (var (path, item) in document.Paths)
        {
            foreach (var (method, operation) in item.Operations ?? [])
            {
                var note = ApiNotes.All.FirstOrDefault(one => one.Method == method.Method && one.Path == path)
                    ?? throw new InvalidOperationException($"{method} {path} is not described in {nameof(ApiNotes)}.");
                Describe(document, operation, note);
            }
        }

        return Task.CompletedTask;
    }

    private static void Describe(OpenApiDocument document, OpenApiOperation operation, ApiNote note)
    {
        operation.OperationId = note.Name;
        operation.Summary = note.Words;
        operation.Tags = new HashSet<OpenApiTagReference> { new(note.Group, document) };
        operation.Parameters ??= [];
        foreach (var query in note.Query)
        {
            operation.Parameters.Add(new OpenApiParameter
            {
                Name = query.Name, In = ParameterLocation.Query, Description = query.Words, Schema = new OpenApiSchema { Type = JsonSchemaType.String, Pattern = query.Pattern },
            });
        }

        foreach (var parameter in operation.Parameters.OfType<OpenApiParameter>().Where(parameter => parameter.In == ParameterLocation.Path))
        {
            parameter.Description = parameter.Name switch
            {
                "operation" => "The operation's name, 1 to 200 characters; a keeper's own is home.",
                "apiary" => "The apiary's id.",
                var name => $"The id of the {name}.",
            };
        }

        if (note.Name == "giveEntries")
            operation.RequestBody = new OpenApiRequestBody { Required = true, Content = Content(Entries(document), MediaTypeNames.Application.Json) };
        var told = operation.Responses ?? [];
        operation.Responses = [];
        foreach (var answer in note.Answers)
        {
            var status = answer.Status.ToString(CultureInfo.InvariantCulture);
            operation.Responses[status] = new OpenApiResponse { Description = answer.Words, Content = ContentOf(document, note, answer, told.GetValueOrDefault(status)) };
        }
    }

    private static IDictionary<string, OpenApiMediaType>? ContentOf(OpenApiDocument document, ApiNote note, ApiAnswer answer, IOpenApiResponse? told)
    {
        if (answer.Status >= 400)
            return Content(new OpenApiSchemaReference("Problem", document), ProblemType);
        if (answer.MediaTypes.Length == 0)
            return told?.Content;
        IOpenApiSchema? shape = note.Name switch
        {
            "takeEntries" => Shape(
                ("incarnation", Text("The life of the server's book in which positions hold.")), ("entries", Entries(document)),
                ("next", Number("The position to ask from next time.")), ("more", new OpenApiSchema { Type = JsonSchemaType.Boolean, Description = "Whether there are more now." })),
            "takePart" => Shape(
                ("incarnation", Text("The life of the server's book in which positions hold.")), ("members", Text("Names the colonies the part is of.")), ("entries", Entries(document)),
                ("next", Number("The position to ask from next time.")), ("more", new OpenApiSchema { Type = JsonSchemaType.Boolean, Description = "Whether there are more now." })),
            "giveEntries" => Shape(
                ("accepted", Number("Entries the book did not hold before.")), ("known", Number("Entries it held already.")),
                ("refused", new OpenApiSchema
                {
                    Type = JsonSchemaType.Array,
                    Items = Shape(("index", Number("Its place in the array, from 0.")), ("id", Text("Its id, where it could be read.", JsonSchemaType.Null)), ("reason", Text("The field and what was expected."))),
                }),
                ("incarnation", Text("The life of the server's book that holds them."))),
            _ => null,
        };
        return Content(shape, answer.MediaTypes);
    }

    private static OpenApiSchema EntryShape()
    {
        var shape = Shape(
            ("id", Text("Made once by the device that wrote the entry.")), ("operation", Text("The operation it belongs to.")), ("author", Text("Who wrote it down.")),
            ("device", Text("The device it was written on.")), ("clock", Text("When it was written down: a hybrid logical clock.")), ("kind", Text("What sort of record the payload is.")),
            ("schema", Number("Version of the payload's form, from 1.")),
            ("payload", new OpenApiSchema { Type = JsonSchemaType.Object, Description = $"The record, at most {EntryJson.GreatestPayload} characters. Its kinds are described in /api/v1/schemas/entry.json." }));
        shape.AdditionalPropertiesAllowed = false;
        return shape;
    }

    private static OpenApiSchema Entries(OpenApiDocument document) => new() { Type = JsonSchemaType.Array, Items = new OpenApiSchemaReference("Entry", document) };

    private static OpenApiSchema Shape(params (string Name, IOpenApiSchema Schema)[] fields) => new()
    {
        Type = JsonSchemaType.Object,
        Properties = fields.ToDictionary(field => field.Name, field => field.Schema),
        Required = new HashSet<string>(fields.Select(field => field.Name)),
    };

    private static OpenApiSchema Text(string words, JsonSchemaType or = 0) => new() { Type = JsonSchemaType.String | or, Description = words };

    private static OpenApiSchema Number(string words) => new() { Type = JsonSchemaType.Integer, Description = words };

    private static Dictionary<string, OpenApiMediaType> Content(IOpenApiSchema? schema, params string[] types) =>
        types.ToDictionary(type => type, type => new OpenApiMediaType { Schema = schema });
}
