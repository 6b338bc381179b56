using System.Text.RegularExpressions;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace Foundress.Architecture.Tests.Texts;

/// <summary>No text that people read stands in the code.</summary>
public sealed partial class LiteralTests
{
    // Attributes of our components and of HTML that are read or heard.
    private const string Read = "Label|Hint|Title|Heading|Lead|BackLabel|SaveLabel|Empty|Caption|Legend|Text|Alt|Unit|aria-label|title|alt|placeholder";

    // Projects whose texts are for people. Science speaks to programmers only, Storage to whoever runs the server (docs/language.md).
    private static readonly string[] Spoken = ["Foundress.Web", "Foundress.Book", "Foundress.Reports", "Foundress.Calendar", "Foundress.Knowledge", "Foundress.Cli", "Foundress.Server", "Foundress.Accounts"];

    private static readonly string[] Passed =
    [
        // Invented people and places of the demo are data.
        "/Demo/",
        // What is wrong with the built-in facts is told to whoever writes them.
        "Foundress.Knowledge/Reading/", "Foundress.Knowledge/KnowledgeBase.cs", "Foundress.Knowledge/Controls/ControlReader.cs", "Foundress.Knowledge/Climates/ClimateDefaults.cs",
        // Names that are found again in files, and seeds of ids: they must never change.
        "Foundress.Knowledge/Sources/", "Foundress.Book/Importing/ControlImport.cs", "Foundress.Book/Importing/JarPlaces.cs", "Foundress.Book/Importing/JarImport.cs",
        "Foundress.Book/Histories/Supersessions.cs", "Foundress.Cli/Commands/BareProposal.cs", "Foundress.Cli/Running/BookAccess.cs", "Foundress.Calendar/DueCalendar.cs", "Foundress.Book/Wording/OfferedWords.cs",
        // Misuse by a programmer.
        "Foundress.Book/Planning/PlanOptions.cs", "Foundress.Reports/Drawing/StripCheck.cs", "/Exchange/ForecastJson.cs", "/Exchange/GrowthJob.cs", "/Exchange/PlanJson.cs",
        "Foundress.Web/Background/Reckoner.cs",
        // What is said to whoever runs the server, to its logs and probes, and to programmers.
        "Foundress.Server/OpenApi/", "Foundress.Server/Running/", "Foundress.Server/ServerOptions.cs", "Foundress.Server/ServerRun.cs", "Foundress.Server/Security/Reach.cs",
        "Foundress.Server/Security/ServerCertificate.cs", "Foundress.Server/Security/CertificateException.cs", "Foundress.Server/Security/AccessRules.cs",
        "Foundress.Server/Accounts/FirstAccount.cs", "Foundress.Server/Endpoints/HealthEndpoints.cs",
        // Statements for databases.
        "/Migrations/", "Foundress.Accounts/Postgres/PostgresAccounts.cs",
    ];

    [Fact]
    public void Pages_Markup_HoldsNoText()
    {
        var found = new List<string>();
        foreach (var (path, text) in SourceTree.Files("src/Foundress.Web", ".razor"))
        {
            var markup = Remark().Replace(CodeBlock().Split(text)[0], string.Empty);
            found.AddRange(Between().Matches(markup).Select(match => match.Groups[1].Value.Trim()).Where(words => words != "Foundress" && Word().IsMatch(Entity().Replace(words, string.Empty))).Select(words => $"{path}: {words}"));
            found.AddRange(Attribute().Matches(markup).Select(match => match.Value).Select(words => $"{path}: {words}"));
        }

        Assert.True(found.Count == 0, string.Join('\n', found));
    }

    [Fact]
    public void Code_Strings_AreNoSentences()
    {
        var found = Sources().SelectMany(source => Sentences(source.Root).Select(words => $"{source.Path}: {words}")).ToList();
        Assert.True(found.Count == 0, $"{found.Count}\n{string.Join('\n', found)}");
    }

    // The language can differ from one reader to the next: a text kept in a static field stays in that of the first.
    [Fact]
    public void Code_StaticFields_KeepNoTexts()
    {
        var found = Sources().SelectMany(source => Kept(source.Root).Select(name => $"{source.Path}: {name}")).ToList();
        Assert.True(found.Count == 0, string.Join('\n', found));
    }

    private static IEnumerable<(string Path, SyntaxNode Root)> Sources() => Spoken
        .SelectMany(project => SourceTree.Files($"src/{project}", ".cs", ".razor"))
        .Where(file => !Passed.Any(part => file.Path.Contains(part, StringComparison.Ordinal)))
        .Select(file => (file.Path, Parse(file.Path.EndsWith(".razor", StringComparison.Ordinal) ? Code(file.Text) : file.Text)));

    private static string Code(string razor) => CodeBlock().Split(razor) is [_, var code, ..] ? "class Page {" + code : string.Empty;

    private static SyntaxNode Parse(string code) => CSharpSyntaxTree.ParseText(code, new CSharpParseOptions(LanguageVersion.Latest)).GetRoot();

    private static IEnumerable<string> Sentences(SyntaxNode root) => root.DescendantNodes()
        .Where(node => node is InterpolatedStringExpressionSyntax || node is LiteralExpressionSyntax { RawKind: (int)SyntaxKind.StringLiteralExpression })
        .Where(node => Prose().IsMatch(Plain(node)) && !Plain(node).StartsWith('<') && !IsForProgrammers(node))
        .Select(node => node.ToString());

    private static string Plain(SyntaxNode node) => node switch
    {
        LiteralExpressionSyntax literal => literal.Token.ValueText,
        InterpolatedStringExpressionSyntax written => string.Concat(written.Contents.Select(part => part is InterpolatedStringTextSyntax text ? text.TextToken.ValueText : "0")),
        _ => string.Empty,
    };

    private static bool IsForProgrammers(SyntaxNode node) => node.Ancestors().Any(ancestor => ancestor switch
    {
        AttributeSyntax => true,
        ObjectCreationExpressionSyntax made => made.Type.ToString() is "ArgumentException" or "ArgumentNullException" or "ArgumentOutOfRangeException" or "InvalidOperationException"
            or "UnreachableException" or "NotSupportedException" or "InvalidDataException" or "KeyNotFoundException" or "JsonException" or "PasskeyException" or "FormatException",
        InvocationExpressionSyntax call => call.Expression.ToString() is "Debug.Assert",
        _ => false,
    });

    private static IEnumerable<string> Kept(SyntaxNode root) => root.DescendantNodes()
        .Where(node => node switch
        {
            FieldDeclarationSyntax field => field.Modifiers.Any(SyntaxKind.StaticKeyword) || field.Modifiers.Any(SyntaxKind.ConstKeyword),
            PropertyDeclarationSyntax property => property.Modifiers.Any(SyntaxKind.StaticKeyword) && property.Initializer is not null,
            _ => false,
        })
        .Where(node => (node is PropertyDeclarationSyntax property ? property.Initializer!.DescendantNodes() : node.DescendantNodes())
            .OfType<MemberAccessExpressionSyntax>()
            .Any(access => access.Expression is IdentifierNameSyntax { Identifier.Text: var name } && name.EndsWith("Texts", StringComparison.Ordinal)
                && !(access.Name.Identifier.Text.StartsWith("Format", StringComparison.Ordinal) && access.Parent is not InvocationExpressionSyntax)
                && !access.Ancestors().TakeWhile(ancestor => ancestor != node).OfType<LambdaExpressionSyntax>().Any()))
        .Select(node => node.ToString());

    [GeneratedRegex(@"@code\s*\{")]
    private static partial Regex CodeBlock();

    [GeneratedRegex(@"@\*.*?\*@", RegexOptions.Singleline)]
    private static partial Regex Remark();

    [GeneratedRegex(@">([^<>@{}=;()]+)(?=[<@])")]
    private static partial Regex Between();

    [GeneratedRegex("[A-Za-z]{2,}")]
    private static partial Regex Word();

    [GeneratedRegex("&[a-z]+;")]
    private static partial Regex Entity();

    [GeneratedRegex($"""\s(?:{Read})="[^"@]*[A-Za-z]{"{2,}"}[^"]*"|\s(?:{Read})="@\("[A-Za-z]{"{2,}"}""")]
    private static partial Regex Attribute();

    // Two words in a row, the second in small letters: "Jar size", "of the".
    [GeneratedRegex(@"(?:^|[^\w./-])[A-Za-z]{2,},? [a-z]{2,}(?![\w/=(-])")]
    private static partial Regex Prose();
}
