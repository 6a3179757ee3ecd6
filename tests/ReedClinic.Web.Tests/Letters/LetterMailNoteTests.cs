using Bunit;
using Microsoft.AspNetCore.Components.Forms;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data.Letters;
using ReedClinic.Domain.Intake;
using ReedClinic.Web.Features.Letters;
using ReedClinic.Web.Mailing;

namespace ReedClinic.Web.Tests.Letters;

/// <summary>What the letter's page says of the mail about it is what became of it.</summary>
public sealed class LetterMailNoteTests : BunitContext
{
    [Theory]
    [InlineData(true, "was written to a folder of the studio’s machine")]
    [InlineData(false, "went out on")]
    public void A_mail_that_was_written_to_a_folder_is_not_said_to_have_gone_out(bool toFolder, string words)
    {
        Services.AddLocalization();
        Services.AddSingleton(TimeProvider.System).AddSingleton<AntiforgeryStateProvider, NoTokens>();
        Services.AddSingleton(new MailPost(toFolder ? new MailSettings { Folder = "/mail" } : new MailSettings { Host = "mail.example.org" }, new Nowhere()));

        var note = Render<LetterMailNote>(p => p
            .Add(one => one.Code, default(BatchCode)).Add(one => one.Mail, new LetterMail(LetterMailState.Sent, DateTimeOffset.UnixEpoch, null)));

        var said = note.Find("[role=status]").TextContent;
        Assert.Contains(words, said, StringComparison.Ordinal);
        Assert.Equal(toFolder, said.Contains("nobody gets it", StringComparison.Ordinal));
    }

    private sealed class NoTokens : AntiforgeryStateProvider
    {
        public override AntiforgeryRequestToken? GetAntiforgeryToken() => null;
    }

    private sealed class Nowhere : IServer
    {
        public IFeatureCollection Features { get; } = new FeatureCollection();

        public void Dispose()
        {
        }

        public Task StartAsync<TContext>(Microsoft.AspNetCore.Hosting.Server.IHttpApplication<TContext> application, CancellationToken cancellationToken)
            where TContext : notnull => Task.CompletedTask;

        public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;
    }
}
