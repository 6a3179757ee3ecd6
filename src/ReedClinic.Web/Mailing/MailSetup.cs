using Microsoft.Extensions.DependencyInjection.Extensions;
using ReedClinic.Data.Jobs;
using ReedClinic.Web.Account.Links;
using ReedClinic.Web.Shared.Hosting;

namespace ReedClinic.Web.Mailing;

/// <summary>Sending mail.</summary>
public static class MailSetup
{
    /// <summary>Reads where mail goes.</summary>
    /// <param name="builder">The host that is being built.</param>
    public static void AddMail(this WebApplicationBuilder builder)
    {
        ArgumentNullException.ThrowIfNull(builder);
        var services = builder.Services;
        var settings = MailSettings.Read(builder.Configuration, builder.Environment);
        services.AddSingleton(settings);
        services.Replace(ServiceDescriptor.Singleton(new OutboxSettings(settings.IsOn)));
        services.AddSingleton<MailPost>();
        services.AddSingleton(new BeginDevice(builder));
        services.AddSingleton(new WayOn(builder));
        services.AddSingleton<MailWords>();
        services.AddSingleton<MailWriter>();
        services.AddSingleton<MailSender>();
    }

    /// <summary>Says where mail goes when that is a folder, which nobody would look into unasked.</summary>
    /// <param name="app">The application.</param>
    public static void AnnounceMail(this WebApplication app)
    {
        ArgumentNullException.ThrowIfNull(app);
        var (settings, announcement) = (app.Services.GetRequiredService<MailSettings>(), app.Services.GetRequiredService<Announcement>());
        if (settings.Folder is { } folder)
        {
            announcement.Say($"Mail is not sent: it is written into {folder}");
        }
        else if (!settings.IsOn)
        {
            announcement.Say("Mail is off, because no mail server is named (Mail:Host). Until then mails wait, and invitations are handed over as links.");
        }
    }
}
