namespace ReedClinic.Web.Shared.Hosting;

/// <summary>Settings that are nobody's to read come from files, not from the environment that a process list may show.</summary>
public static class Secrets
{
    /// <summary>A folder with one file for each such setting: the name is the setting's, with <c>__</c> between its parts.</summary>
    public const string Folder = "Secrets:Folder";

    /// <summary>Adds the files of that folder to the settings, if one is named.</summary>
    /// <param name="builder">The host that is being built.</param>
    public static void AddSecrets(this WebApplicationBuilder builder)
    {
        if (builder.Configuration[Folder] is { Length: > 0 } folder)
        {
            builder.Configuration.AddKeyPerFile(Path.GetFullPath(folder, builder.Environment.ContentRootPath), optional: false);
        }
    }
}
