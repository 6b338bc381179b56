namespace Foundress.Server.Security;

/// <summary>The certificate cannot be used; the message says why and what to give.</summary>
public sealed class CertificateException : Exception
{
    /// <summary>An error with a message and its cause.</summary>
    public CertificateException(string message, Exception inner)
        : base(message, inner)
    {
    }

    /// <summary>An error with a message only.</summary>
    public CertificateException(string message)
        : base(message)
    {
    }

    /// <summary>An error without further detail.</summary>
    public CertificateException()
        : base("The certificate cannot be used.")
    {
    }
}
