using System.Net.Security;
using System.Net.Sockets;
using System.Security.Cryptography.X509Certificates;
using MailKit;
using MailKit.Net.Smtp;
using MailKit.Security;
using MimeKit;
using ReedClinic.Data.Jobs;

namespace ReedClinic.Web.Mailing;

/// <summary>What became of a try to send.</summary>
/// <param name="Problem">Why it wasn't sent, in words that name nobody; null when it was.</param>
/// <param name="ForEver">True when no later try could help.</param>
/// <param name="Way">How it was done; null when it wasn't.</param>
public readonly record struct SendResult(string? Problem, bool ForEver, MailWay? Way = null)
{
    /// <summary>It is done.</summary>
    public static SendResult Done(MailWay way) => new(null, false, way);

    /// <summary>Not now.</summary>
    public static SendResult Later(string problem) => new(problem, false);

    /// <summary>Never.</summary>
    public static SendResult Never(string problem) => new(problem, true);
}

/// <summary>
/// Brings mails to the mail server, over TLS and to a server whose certificate holds, or else not at all; or writes them
/// into a folder. One connection serves a burst of mails; <see cref="RestAsync"/> ends it.
/// </summary>
/// <param name="settings">Where mail goes.</param>
/// <param name="time">The clock.</param>
public sealed class MailSender(MailSettings settings, TimeProvider time) : IAsyncDisposable
{
    /// <summary>How long a server may take for one step. Connecting and sending together stay below a worker's lease.</summary>
    public static TimeSpan Patience { get; } = TimeSpan.FromSeconds(30);

    private SmtpClient? _client;

    /// <summary>Tries to send one.</summary>
    /// <param name="message">The message.</param>
    /// <param name="ct">Stops it.</param>
    public async Task<SendResult> SendAsync(MimeMessage message, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(message);
        try
        {
            await (settings.Folder is { } folder ? WriteAsync(message, folder, ct) : PostAsync(message, ct)).ConfigureAwait(false);
            return SendResult.Done(settings.Folder is null ? MailWay.Posted : MailWay.Folder);
        }
        catch (Exception failure) when (Meaning(failure, ct) is { } result)
        {
            Drop();
            return result;
        }
        catch
        {
            Drop();
            throw;
        }
    }

    /// <summary>Ends the connection, until there is more to send.</summary>
    /// <param name="ct">Stops it.</param>
    public async Task RestAsync(CancellationToken ct)
    {
        if (_client is { IsConnected: true } client)
        {
            try
            {
                await client.DisconnectAsync(quit: true, ct).ConfigureAwait(false);
            }
            catch (Exception failure) when (failure is IOException or ProtocolException or SocketException)
            {
                // It is gone already, which is what was wanted.
            }
        }

        Drop();
    }

    /// <inheritdoc />
    public async ValueTask DisposeAsync() => await RestAsync(CancellationToken.None).ConfigureAwait(false);

    // A code of 5 means: never again in this form (RFC 5321, 4.2.1). Whatever is wrong with the way there may be mended.
    private static SendResult? Meaning(Exception failure, CancellationToken stopping) => failure switch
    {
        _ when stopping.IsCancellationRequested => null,
        SmtpCommandException { StatusCode: >= SmtpStatusCode.SyntaxError } refused => SendResult.Never($"The mail server refused it ({(int)refused.StatusCode})."),
        SmtpCommandException waits => SendResult.Later($"The mail server asked to try later ({(int)waits.StatusCode})."),
        AuthenticationException => SendResult.Later("The mail server didn't take the user and password of the settings."),
        SslHandshakeException => SendResult.Later("The mail server's certificate isn't one that can be trusted."),
        NotSupportedException => SendResult.Later("The mail server doesn't offer what the settings ask for, such as a private connection."),
        OperationCanceledException or TimeoutException => SendResult.Later("The mail server took too long."),
        IOException when failure is DirectoryNotFoundException or FileNotFoundException => SendResult.Later("The folder for mails can't be written to."),
        UnauthorizedAccessException => SendResult.Later("The folder for mails can't be written to."),
        IOException or SocketException or ProtocolException or ServiceNotConnectedException => SendResult.Later("The connection to the mail server failed."),
        _ => null,
    };

    private async Task PostAsync(MimeMessage message, CancellationToken ct)
    {
        var client = await ConnectedAsync(ct).ConfigureAwait(false);
        using var patience = new CancellationTokenSource(Patience, time);
        using var either = CancellationTokenSource.CreateLinkedTokenSource(patience.Token, ct);
        var format = FormatOptions.Default.Clone();
        format.International = client.Capabilities.HasFlag(SmtpCapabilities.UTF8); // RFC 6531, where the server knows it
        await client.SendAsync(format, message, either.Token).ConfigureAwait(false);
    }

    private async Task<SmtpClient> ConnectedAsync(CancellationToken ct)
    {
        if (_client is { IsConnected: true } there)
        {
            return there;
        }

        Drop();
        var client = _client = new SmtpClient { Timeout = (int)Patience.TotalMilliseconds };
        if (settings.Authority is { } file)
        {
            client.ServerCertificateValidationCallback = (_, certificate, _, errors) => IsVouchedFor(file, certificate, errors);
        }

        using var patience = new CancellationTokenSource(Patience, time);
        using var either = CancellationTokenSource.CreateLinkedTokenSource(patience.Token, ct);
        var tls = settings.Tls == MailTls.SslOnConnect ? SecureSocketOptions.SslOnConnect : SecureSocketOptions.StartTls;
        await client.ConnectAsync(settings.Host!, settings.Port, tls, either.Token).ConfigureAwait(false);
        if (settings.User is { } user)
        {
            await client.AuthenticateAsync(user, settings.Password ?? "", either.Token).ConfigureAwait(false);
        }

        return client;
    }

    // The name must be right whoever vouches for it.
    private static bool IsVouchedFor(string file, X509Certificate? certificate, SslPolicyErrors errors)
    {
        if (certificate is null || (errors & ~SslPolicyErrors.RemoteCertificateChainErrors) != SslPolicyErrors.None)
        {
            return false;
        }

        using var shown = X509CertificateLoader.LoadCertificate(certificate.GetRawCertData());
        using var chain = new X509Chain();
        chain.ChainPolicy.TrustMode = X509ChainTrustMode.CustomRootTrust;
        chain.ChainPolicy.CustomTrustStore.ImportFromPemFile(file);
        chain.ChainPolicy.RevocationMode = X509RevocationMode.NoCheck;
        return chain.Build(shown);
    }

    // Beside its name first, so that whoever reads the folder never sees half a mail. It holds a link: nobody else may read it.
    private async Task WriteAsync(MimeMessage message, string folder, CancellationToken ct)
    {
        Directory.CreateDirectory(folder);
        var name = $"{time.GetUtcNow():yyyyMMdd'T'HHmmssfff}-{message.MessageId!.Split('@')[0]}.eml";
        var half = Path.Combine(folder, name + ".part");
        var options = new FileStreamOptions { Mode = FileMode.Create, Access = FileAccess.Write, Options = FileOptions.Asynchronous };
        if (!OperatingSystem.IsWindows())
        {
            options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        }

        var file = new FileStream(half, options);
        await using (file.ConfigureAwait(false))
        {
            message.Prepare(EncodingConstraint.SevenBit);
            await message.WriteToAsync(file, ct).ConfigureAwait(false);
        }

        File.Move(half, Path.Combine(folder, name), overwrite: true);
    }

    private void Drop()
    {
        _client?.Dispose();
        _client = null;
    }
}
