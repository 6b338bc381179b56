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
            // English answers write numbers and days as machines do, as they always have.
            DefaultRequestCulture = new RequestCulture(CultureInfo.InvariantCulture, spoken[0]),
            SupportedCultures = [.. spoken.Where(culture => Languages.Of(culture) != Languages.English)],
            SupportedUICultures = spoken,
            RequestCultureProviders = [new AcceptLanguageHeaderRequestCultureProvider()],
            ApplyCurrentCultureToResponseHeaders = true,
        });
        // A caller who reads English before German was given German numbers: the two are matched apart.
        app.Use((_, next) =>
        {
            if (Languages.Current == Languages.English)
                CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
            return next();
        });
    }
}
