using System.Globalization;
using System.Resources;

[assembly: NeutralResourcesLanguage("en-GB")]

namespace ReedClinic.Web.Shared.Hosting;

/// <summary>One language so far, set explicitly so that no machine's own settings leak into dates and numbers.</summary>
public static class Language
{
    /// <summary>British English: how dates and numbers are written on every page.</summary>
    public static readonly CultureInfo British = CultureInfo.GetCultureInfo("en-GB");

    /// <summary>Text comes from <c>XText.resx</c> beside its marker class <c>XText</c>.</summary>
    /// <param name="builder">The host that is being built.</param>
    public static void AddLanguage(this WebApplicationBuilder builder)
    {
        CultureInfo.DefaultThreadCurrentCulture = British;
        CultureInfo.DefaultThreadCurrentUICulture = British;
        builder.Services.AddLocalization();
    }

    /// <summary>Every request is answered in British English, whatever the browser asks for.</summary>
    /// <param name="app">The application.</param>
    public static void UseLanguage(this WebApplication app) =>
        app.UseRequestLocalization(options =>
        {
            options.DefaultRequestCulture = new(British);
            options.SupportedCultures = [British];
            options.SupportedUICultures = [British];
            options.RequestCultureProviders.Clear();
        });
}
