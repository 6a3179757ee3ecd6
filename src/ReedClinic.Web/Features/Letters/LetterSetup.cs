namespace ReedClinic.Web.Features.Letters;

/// <summary>What the letter's pages need.</summary>
public static class LetterSetup
{
    /// <summary>Adds it to the host.</summary>
    /// <param name="builder">The host.</param>
    public static void AddLetters(this WebApplicationBuilder builder) =>
        builder.Services.AddSingleton<LetterPages>().AddSingleton<LetterFrames>().AddScoped<LetterMending>().AddScoped<LetterRewriting>().AddScoped<LetterKeeping>();
}
