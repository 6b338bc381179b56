using System.CommandLine;
using System.Globalization;
using Foundress.Book.Wording;

namespace Foundress.Cli.Running;

/// <summary>The language of a run: the one named on the command line, else in the environment, else the system's.</summary>
internal static class SpokenLanguage
{
    internal const string Variable = "FOUNDRESS_LANGUAGE";
    private const string Name = "--language";

    internal static Option<string?> Option() => new(Name)
    {
        Description = SharedTexts.FormatLanguage(Names, Variable),
        HelpName = string.Join('|', Languages.All.Select(language => language.Code)),
        Recursive = true,
    };

    /// <summary>Speaks the language from here on. It must be known before the commands are made, for their descriptions are written in it then.</summary>
    /// <returns>The surroundings, with the numbers of that language.</returns>
    /// <exception cref="UsageException">There is no such language.</exception>
    internal static Surroundings Speak(IReadOnlyList<string> args, Surroundings around)
    {
        // Whatever is wrong is said in the language known so far.
        Use(Languages.Of(around.SystemLanguage));
        var asked = Asked(args);
        if (asked is not null && Find(asked) is { } wanted)
        {
            Use(wanted);
        }
        else
        {
            if (around.Variable(Variable) is { } set && !string.IsNullOrWhiteSpace(set))
                Use(Find(set) ?? throw Unknown(Variable, set));
            if (asked is not null)
                throw Unknown(Name, asked);
        }

        return around with { Culture = NumbersOf(Languages.Current, around.SystemNumbers) };
    }

    // By the parser's own rules, with every other word left aside.
    private static string? Asked(IReadOnlyList<string> args)
    {
        var option = new Option<string?>(Name);
        var any = new RootCommand { TreatUnmatchedTokensAsErrors = false };
        any.Add(option);
        return any.Parse(args).GetResult(option)?.Tokens is [var first, ..] ? first.Value : null;
    }

    private static string Names => string.Join(", ", Languages.All.Select(language => $"{language.Code} ({language.OwnName})"));

    private static Language? Find(string code) => Languages.All.FirstOrDefault(language => language.Code.Equals(code.Trim(), StringComparison.OrdinalIgnoreCase));

    private static UsageException Unknown(string from, string code) => UsageException.OfValue(from, code, SharedTexts.FormatLanguageUnknown(Names));

    private static void Use(Language language) => CultureInfo.CurrentUICulture = CultureInfo.GetCultureInfo(language.Code);

    // English has no decimals of one country: it keeps the point, which is also how numbers are typed.
    private static CultureInfo NumbersOf(Language language, CultureInfo system) =>
        language == Languages.English ? CultureInfo.InvariantCulture : language.Near(system);
}
