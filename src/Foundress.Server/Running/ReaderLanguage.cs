using System.Globalization;
using Foundress.Book.Wording;
using Microsoft.AspNetCore.Localization;

namespace Foundress.Server.Running;

/// <summary>Each caller is answered in the language they ask for (<c>Accept-Language</c>), if the program speaks it.</summary>
internal static class ReaderLanguage
{
    /// <summary>Sets the language of everything that follows.</summary>
    internal static void UseReaderLanguage(this IApplicationBuilder app)
    {
        var spoken = Languages.All.Select(language => CultureInfo.GetCultureInfo(language.Code)).ToList();
        app.UseRequestLocalization(new RequestLocalizationOptions
        {
            DefaultRequestCulture = new RequestCulture(spoken[0]),
            // One list for both: numbers of one language beside words of another would mislead.
            SupportedCultures = spoken,
            SupportedUICultures = spoken,
            RequestCultureProviders = [new AcceptLanguageHeaderRequestCultureProvider()],
            ApplyCurrentCultureToResponseHeaders = true,
        });
        // English answers write numbers and days as machines do, as they always have.
        app.Use((_, next) =>
        {
            if (Languages.Current == Languages.English)
                CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
            return next();
        });
    }
}
