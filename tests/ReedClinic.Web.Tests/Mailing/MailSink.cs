using System.Buffers;
using System.Collections.Concurrent;
using System.Net;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using MimeKit;
using ReedClinic.KillDriver;
using SmtpServer;
using SmtpServer.Protocol;
using SmtpServer.Storage;

namespace ReedClinic.Web.Tests.Mailing;

/// <summary>A mail server in this process, which does with each mail what a test asks for.</summary>
public sealed class MailSink : IAsyncDisposable
{
    private readonly CancellationTokenSource _stop = new();
    private readonly X509Certificate2 _certificate = SelfMade();
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("reedclinic-sink-");
    private Task _running = Task.CompletedTask;

    public MailSink() => File.WriteAllText(Authority, _certificate.ExportCertificatePem());

    /// <summary>What happens to a mail that has come in whole; the first try of it is number 1.</summary>
    public Func<MimeMessage, int, Fate> Does { get; set; } = (_, _) => Fate.Taken;

    public int Port { get; } = Ports.Free();

    /// <summary>The certificate's own file: who trusts it, trusts this server.</summary>
    public string Authority => Path.Combine(_folder.FullName, "sink.pem");

    /// <summary>Every mail that came in whole, whatever was answered.</summary>
    public ConcurrentQueue<MimeMessage> Came { get; } = new();

    /// <summary>Those that were said to be taken.</summary>
    public ConcurrentQueue<MimeMessage> Taken { get; } = new();

    /// <summary>How many ways in were private when a mail came.</summary>
    public int Private => _private;

    private int _private;
    private TaskCompletionSource _letGo = new(TaskCreationOptions.RunContinuationsAsynchronously);

    /// <summary>Lets go of the mails that got no answer so far (<see cref="Fate.Stalled"/>).</summary>
    public void LetGo() => Interlocked.Exchange(ref _letGo, new(TaskCreationOptions.RunContinuationsAsynchronously)).SetResult();

    public void Open(bool fromTheFirstByte = false)
    {
        var options = new SmtpServerOptionsBuilder().ServerName("localhost").Endpoint(at => at
            .Endpoint(new IPEndPoint(IPAddress.Loopback, Port)).IsSecure(fromTheFirstByte).Certificate(_certificate)).Build();
        var services = new SmtpServer.ComponentModel.ServiceProvider();
        services.Add(new Store(this));
        _running = new SmtpServer.SmtpServer(options, services).StartAsync(_stop.Token);
    }

    public async ValueTask DisposeAsync()
    {
        await _stop.CancelAsync();
        LetGo();
        await _running.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        _stop.Dispose();
        _certificate.Dispose();
        _folder.Delete(recursive: true);
    }

    private async Task<SmtpResponse> TakeAsync(ISessionContext session, MimeMessage message)
    {
        var letGo = _letGo.Task;
        Came.Enqueue(message);
        if (session.Pipe.IsSecure)
        {
            Interlocked.Increment(ref _private);
        }

        var fate = Does(message, Came.Count(other => other.MessageId == message.MessageId));
        if (fate is Fate.Taken or Fate.TakenButNotSaid or Fate.TakenAndStalled)
        {
            Taken.Enqueue(message);
        }

        if (fate is Fate.Stalled or Fate.TakenAndStalled)
        {
            await letGo.ConfigureAwait(false);
        }

        if (fate is Fate.TakenButNotSaid or Fate.Stalled or Fate.TakenAndStalled)
        {
            session.Pipe.Dispose();
        }

        return fate switch
        {
            Fate.NotNow => new SmtpResponse(SmtpReplyCode.Aborted, "come back later"),
            Fate.Never => new SmtpResponse(SmtpReplyCode.TransactionFailed, "no"),
            _ => SmtpResponse.Ok,
        };
    }

    private static X509Certificate2 SelfMade()
    {
        using var key = RSA.Create(2048);
        var request = new CertificateRequest("CN=localhost", key, HashAlgorithmName.SHA256, RSASignaturePadding.Pkcs1);
        request.CertificateExtensions.Add(new X509BasicConstraintsExtension(true, false, 0, true));
        var names = new SubjectAlternativeNameBuilder();
        names.AddDnsName("localhost");
        request.CertificateExtensions.Add(names.Build());
        using var made = request.CreateSelfSigned(TimeProvider.System.GetUtcNow().AddDays(-1), TimeProvider.System.GetUtcNow().AddDays(1));
        return X509CertificateLoader.LoadPkcs12(made.Export(X509ContentType.Pkcs12), null);
    }

    private sealed class Store(MailSink sink) : MessageStore
    {
        public override Task<SmtpResponse> SaveAsync(
            ISessionContext context, IMessageTransaction transaction, ReadOnlySequence<byte> buffer, CancellationToken cancellationToken)
        {
            using var raw = new MemoryStream(buffer.ToArray());
            return sink.TakeAsync(context, MimeMessage.Load(raw, cancellationToken));
        }
    }
}

/// <summary>What a mail server may do with a mail.</summary>
public enum Fate
{
    Taken,
    NotNow,
    Never,
    TakenButNotSaid,

    /// <summary>No answer until the test lets go, and then the connection ends; the mail is thrown away.</summary>
    Stalled,

    /// <summary>The same, but the mail is kept.</summary>
    TakenAndStalled,
}
