using System.Security.Cryptography;
using System.Text.Json;
using Microsoft.AspNetCore.DataProtection;
using ReedClinic.Data.Engine;

namespace ReedClinic.Data.Jobs;

/// <summary>
/// Puts mail out to be sent: a row in the same save as what the mail tells of, so that no mail goes out for what was never
/// saved. What stands in the row is sealed until it is sent, and emptied then.
/// </summary>
public sealed class Outbox(IDataProtectionProvider keys, TimeProvider time, OutboxSettings settings)
{
    /// <summary>False while whoever runs the program sends no mail: what is put out then waits, and may never go.</summary>
    public bool GoesOut => settings.GoesOut;

    private readonly IDataProtector _seal = keys.CreateProtector("ReedClinic.Outbox");

    /// <summary>Adds a mail to what is about to be saved.</summary>
    /// <param name="db">The context that will be saved.</param>
    /// <param name="mail">The mail.</param>
    /// <param name="once">What mustn't be told twice; null when it may.</param>
    internal void Put(ClinicDb db, Mail mail, string? once = null) => Add(db, mail, once, sent: false);

    /// <summary>The same work for a mail that nobody gets: a row that is done already and holds nothing, so that nobody can tell by the time it took.</summary>
    /// <param name="db">The context that will be saved.</param>
    /// <param name="mail">What would have been sent.</param>
    internal void PutAside(ClinicDb db, Mail mail) => Add(db, mail, once: null, sent: true);

    private void Add(ClinicDb db, Mail mail, string? once, bool sent)
    {
        var payload = Sealed(mail);
        var now = time.GetUtcNow();
        db.Add(new Job
        {
            Id = Guid.CreateVersion7(now),
            Kind = JobKind.Mail,
            Payload = sent ? "" : payload,
            About = mail.About,
            Once = once,
            MadeAt = now,
            DoneAt = sent ? now : null,
            DueAt = now,
        });
    }

    /// <summary>Seals a mail that waits anew, under the address that it goes to from now on, and counts its tries from the start.</summary>
    /// <param name="waiting">Its job, in the context that will be saved.</param>
    /// <param name="mail">The same mail with the other address.</param>
    internal void Readdress(Job waiting, Mail mail) => (waiting.Payload, waiting.Attempts) = (Sealed(mail), 0);

    private string Sealed(Mail mail) => _seal.Protect(JsonSerializer.Serialize(mail, StoredText.Json));

    /// <summary>
    /// To be called before a transaction that puts something out: the first key is written over a connection of its own,
    /// which would wait for the transaction that waits for it.
    /// </summary>
    internal void Ready() => _seal.Protect("");

    /// <summary>The mail of a job; null when its seal can't be opened any more, because the keys are gone.</summary>
    /// <param name="job">As it was claimed.</param>
    public Mail? Open(Job job)
    {
        ArgumentNullException.ThrowIfNull(job);
        try
        {
            return JsonSerializer.Deserialize<Mail>(_seal.Unprotect(job.Payload));
        }
        catch (CryptographicException)
        {
            return null;
        }
    }
}
